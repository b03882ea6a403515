#pragma once

#include "bankwright/devices/motor_propeller.hpp"
#include "bankwright/planning/wish.hpp"

namespace bankwright {

BANKWRIGHT_INLINE Current motor_current(Wish const& wish) {
    if (wish.current) return *wish.current;
    if (wish.power) return *wish.power / wish.system;
    return current_for_thrust(wish.thrust.value_or(Force{}), wish.system);
}

} // namespace bankwright
