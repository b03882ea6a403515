// What a renderer of a run or of a charge is given: one file's bank through time.
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/recharge.hpp"
#include "bankwright/analyses/run_range.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/devices/battery_limits.hpp"
#include "bankwright/reports/report_head.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bankwright {

struct ThroughTime : ReportHead {
    std::vector<std::string> batteries; // ids, in the order of the samples
    std::vector<std::optional<Charge>> capacities;
    std::vector<std::optional<Voltage>> high_cutoffs;
};

inline ThroughTime through_time(Bank const& bank, ReportHead head) {
    ThroughTime told{std::move(head), {}, {}, {}};
    for (auto const& battery : bank.batteries) {
        told.batteries.push_back(battery.id);
        told.capacities.push_back(battery.capacity);
        told.high_cutoffs.push_back(high_cutoff(battery));
    }
    return told;
}

struct Discharged : ThroughTime {
    DischargeResult run;
    std::optional<Duration> alike; // how long the same batteries would run if they were all alike
    std::optional<RunRange> range{};
};

struct Recharged : ThroughTime {
    RechargeResult run;
    std::vector<std::string> sources{}; // what must be known of each charger: reports/source_cautions.hpp
};

// The words of the JSON.
constexpr std::string_view name(RunEnd end) {
    switch (end) {
    case RunEnd::time:
        return "time";
    case RunEnd::battery_empty:
        return "battery-empty";
    case RunEnd::battery_cutoff:
        return "battery-cutoff";
    case RunEnd::load_cutoff:
        return "load-cutoff";
    case RunEnd::no_operating_point:
        return "no-operating-point";
    case RunEnd::nothing_drawn:
        return "nothing-drawn";
    }
    return "time";
}

constexpr std::string_view name(RechargeEnd end) {
    switch (end) {
    case RechargeEnd::full:
        return "full";
    case RechargeEnd::not_all_full:
        return "not-all-full";
    case RechargeEnd::time:
        return "time";
    case RechargeEnd::nothing_charges:
        return "nothing-charges";
    case RechargeEnd::battery_empty:
        return "battery-empty";
    }
    return "time";
}

} // namespace bankwright
