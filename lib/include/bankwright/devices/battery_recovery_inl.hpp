// Bodies of battery_recovery.hpp.
#pragma once

#include "bankwright/devices/battery_recovery.hpp"
#include "bankwright/numeric/interpolate.hpp"

#include <algorithm>
#include <cmath>

namespace bankwright {

// After a time t at I from full the charge is 1 - I t / C and the lag g (1 - exp(-k t)) / k. At Peukert's time their
// difference shall be the least that it may be, -deep.
BANKWRIGHT_INLINE double lag_growth(DischargeLaw const& law, Current current) {
    auto const rated = law.rated_current();
    auto const amperes = std::max(current, rated);
    auto const time = peukert_time(law.full, law.rated, law.exponent, amperes).value();
    auto const left = 1.0 - amperes.value() * time / law.full.value();
    auto const growth = (left + law.deep) * recovery_rate / -std::expm1(-recovery_rate * time);
    return growth * (current / amperes);
}

// The charge falls straight, the lag bends, so the moment is found by halving.
BANKWRIGHT_INLINE Duration time_to_empty(Battery const& battery, Current current, Temperature ambient) {
    auto const law = discharge_law(battery, ambient);
    auto const charge = battery.charge.value_or(StateOfCharge::of(1.0)).value();
    auto const rate = current.value() / law.full.value(); // [1/s]
    auto const growth = lag_growth(law, current);
    auto const used_up = [&](double time) {
        return rate * time - growth * std::expm1(-recovery_rate * time) / recovery_rate;
    };
    auto const all_gone = charge / rate; // the latest
    return numeric::inverse(used_up, charge + law.deep, 0.0, all_gone) * si::second;
}

} // namespace bankwright
