#include "meter_words.hpp"

#include "bankwright/text/escape.hpp"
#include "bankwright/text/stated_accuracy.hpp"
#include "bankwright/units/parse.hpp"

using namespace bankwright;

std::string read_meter(std::string const& typed, HookupOptions& options) {
    auto const accuracy = parse_stated_accuracy(typed);
    if (!accuracy)
        return "`" + terminal_safe(typed) + "` is no accuracy of a meter; expected one such as \"0.5 % + 2 digits\"";
    options.of_reading = accuracy->of_reading;
    options.digits = accuracy->digits;
    return {};
}

std::string read_resolution(std::string const& typed, HookupOptions& options) {
    auto const digit = parse<Voltage>(typed);
    if (!digit.value) return digit.problem;
    if (!(digit.value->value() > 0.0 && digit.value->value() <= 10.0))
        return "`" + terminal_safe(typed) + "` is out of range; above 0 V, to 10 V";
    options.resolution = *digit.value;
    return {};
}

std::string read_charge_within(std::string const& typed, HookupOptions& options) {
    auto const within = parse<StateOfCharge>(typed);
    if (!within.value) return within.problem;
    if (within.value->value() < 0.0 || within.value->value() > 1.0)
        return "`" + terminal_safe(typed) + "` is out of range; a share is 0 % to 100 %";
    options.charge_within = *within.value;
    return {};
}
