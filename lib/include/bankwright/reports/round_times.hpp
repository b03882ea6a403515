// At which times does a table tell how things stand? At round ones, about a dozen.
#pragma once

#include "bankwright/units/quantities.hpp"

namespace bankwright {

// From one row to the next, so that a table of so long a time has at most thirteen steps: 1, 2, 5, 10, 15 or 30
// seconds or minutes, 1, 2, 3, 6 or 12 hours, or whole days. `whole` > 0.
inline Duration round_step(Duration whole) {
    constexpr double most_steps = 13.0, hour = 3600.0, day = 24.0 * hour;
    for (double const seconds : {1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 300.0, 600.0, 900.0, 1800.0, hour,
                                 2.0 * hour, 3.0 * hour, 6.0 * hour, 12.0 * hour})
        if (whole.value() <= most_steps * seconds) return seconds * si::second;
    double days = 1.0;
    while (whole.value() > most_steps * days * day)
        days += 1.0;
    return days * day * si::second;
}

} // namespace bankwright
