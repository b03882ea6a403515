#pragma once

#include "bankwright/planning/wish.hpp"

#include <cmath>

namespace bankwright {

BANKWRIGHT_INLINE Power power_of_thrust(Force thrust) {
    constexpr double water = 1000.0;           // [kg/m3]
    constexpr double diameter = 11.0 * 0.0254; // [m]
    constexpr double left_for_it = 0.5;        // of the electric power
    constexpr double pi = 3.14159265358979323846;
    constexpr double disk = 0.25 * pi * diameter * diameter; // [m2]
    return std::pow(thrust.value(), 1.5) / std::sqrt(2.0 * water * disk) / left_for_it * si::watt;
}

BANKWRIGHT_INLINE Current motor_current(Wish const& wish) {
    if (wish.current) return *wish.current;
    return wish.power.value_or(power_of_thrust(wish.thrust.value_or(Force{}))) / wish.system;
}

} // namespace bankwright
