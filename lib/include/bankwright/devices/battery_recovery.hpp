// How much of a battery's charge can come at once, and how does the rest follow?
//
// What a high current leaves behind is not lost: it lies too deep in the plates to come at once, and a slower discharge
// or a rest brings it (Doerffel and Sharkh, J. Power Sources 155 (2006) 395 [title and finding recalled]). The kinetic
// battery model (Manwell and McGowan, Solar Energy 50 (1993) 399 [as public implementations restate it]) keeps two
// wells, charge at hand and charge bound. Their two levels are told here as the state of charge, from which a current
// takes exactly what flows, and a lag, by which the level at hand stands below it. A current makes the lag grow, and it
// dies away by itself:
//
//     d(charge)/dt = -I / C,   d(lag)/dt = g(I) - k lag.
//
// The model's own g is proportional to the current, which fits one other run time. Here g follows the current so that
// at each constant current, from full, the level at hand comes to its end after just the time of Peukert's law.
#pragma once

#include "bankwright/devices/battery_capacity.hpp"

namespace bankwright {

// [1/s] k: two thirds of what lags are back after an hour. Published fits lie between a half and some per hour [from
// memory].
inline constexpr double recovery_rate = 1.0 / 3600.0;

// [1/s] g: how fast a current, discharging, makes the lag grow. Proportional to it below the rated one.
double lag_growth(DischargeLaw const&, Current);

// Time to empty at a constant current, from the battery's own state of charge at rest: until the level at hand is at
// its end, or all charge is gone.
Duration time_to_empty(Battery const&, Current, Temperature ambient);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/battery_recovery_inl.hpp"
#endif
