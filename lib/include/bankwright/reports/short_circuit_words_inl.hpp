// Bodies of short_circuit_words.hpp.
#pragma once

#include "bankwright/reports/short_circuit_words.hpp"
#include "bankwright/units/print.hpp"

#include <cmath>

#include <fmt/format.h>

namespace bankwright::short_circuit_words {

BANKWRIGHT_INLINE std::string needed(DeviceDuty const& device) {
    auto const amperes = print(device.need);
    switch (device.needed_by) {
    case NeededBy::table:
        return amperes + " (E-11, by cranking)";
    case NeededBy::large_bank:
        return amperes + " (E-11, large bank)";
    case NeededBy::short_circuit:
        break;
    }
    return amperes;
}

BANKWRIGHT_INLINE std::string ended(ShortPlace const& place) {
    if (place.cleared_within)
        return fmt::format("{} within {}", fmt::join(place.cleared_by, ", "), print(*place.cleared_within));
    if (place.devices.empty()) return "nothing opens";
    if (place.bypassed) return "flows on past every device";
    for (auto const& device : place.devices)
        if (!device.interrupts.value_or(true)) return fmt::format("not sure: {} cannot break it", device.id);
    for (auto const& device : place.devices)
        if (!device.band) return fmt::format("not sure: the curve of {} is not known", device.id);
    return "not sure: its standard sets no limit";
}

BANKWRIGHT_INLINE std::string band(FaultDevice const& device) {
    if (!device.band) return "curve not known";
    auto const at_least = device.band->at_least.value();
    auto const at_most = device.band->at_most.value();
    if (!std::isfinite(at_least)) return "holds";
    auto const from = at_least > 0.0 ? print(device.band->at_least) + " to " : std::string("up to ");
    return std::isfinite(at_most) ? from + print(device.band->at_most) : from + "no limit";
}

} // namespace bankwright::short_circuit_words
