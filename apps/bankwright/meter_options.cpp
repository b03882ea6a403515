#include "meter_options.hpp"

#include "bankwright/text/stated_accuracy.hpp"
#include "common_options.hpp"

using namespace bankwright;

namespace {

option::Typed accuracy(HookupOptions& hookup) { // "0.5 % + 2 digits"
    return {[&hookup](std::string const& typed) -> std::string {
        auto const accuracy = parse_stated_accuracy(typed);
        if (!accuracy)
            return "--meter: `" + terminal_safe(typed) +
                   "` is not a meter's accuracy; expected one such as \"0.5 % + 2 digits\"";
        hookup.of_reading = accuracy->of_reading;
        hookup.digits = accuracy->digits;
        return {};
    }};
}

} // namespace

void add_meter(std::vector<Option>& options, HookupOptions& hookup) {
    options.push_back({.names = "--meter",
                       .kind = accuracy(hookup),
                       .help = "How far the meter may be off (default \"0.5 % + 2 digits\", common practice)",
                       .stands_for = "ACCURACY"});
    options.push_back({.names = "--resolution",
                       .kind = quantity<Voltage>("--resolution", hookup.resolution, resolution_problem),
                       .help = "One digit of the meter (default \"10 mV\" below 20 V and \"100 mV\" above)",
                       .stands_for = "VOLTAGE"});
    options.push_back({.names = "--charge-within",
                       .kind = quantity<StateOfCharge>("--charge-within", hookup.charge_within, charge_within_problem),
                       .help = "How close each battery is to the charge that the file states (default \"5 %\")",
                       .stands_for = "SHARE"});
}
