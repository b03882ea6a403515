#include "through_time.hpp"

#include "bankwright/devices/battery_limits.hpp"

using namespace bankwright;

ThroughTime through_time(std::string const& file, Reading const& reading) {
    ThroughTime told;
    told.file = file;
    told.arrangement = reading.verdict.arrangement;
    told.counts = count(reading.verdict.findings);
    for (auto const& battery : reading.bank.batteries) {
        told.batteries.push_back(battery.id);
        told.capacities.push_back(battery.capacity);
        told.high_cutoffs.push_back(high_cutoff(battery));
    }
    return told;
}
