// Bodies of motor_propeller.hpp.
#pragma once

#include "bankwright/devices/motor_propeller.hpp"
#include "bankwright/linkage.hpp"

#include <cmath>
#include <stdexcept>

namespace bankwright {

BANKWRIGHT_INLINE PropellerLaw propeller_law(Motor const& motor) {
    if (!motor.voltage || !motor.current)
        throw std::invalid_argument("motor `" + motor.id + "` needs `voltage` and `current`");
    auto const winding = motor.winding.value_or(Resistance{});
    Voltage const back_emf = *motor.voltage - *motor.current * winding;
    if (!(back_emf.value() > 0.0))
        throw std::invalid_argument("motor `" + motor.id +
                                    "`: `winding` takes all of the nameplate voltage at the nameplate current");
    return {*motor.current / (back_emf * back_emf), winding};
}

BANKWRIGHT_INLINE double duty(Motor const& motor, Throttle throttle) {
    if (motor.control == SpeedControl::direct) return throttle.value() > 0.0 ? 1.0 : 0.0;
    return throttle.value();
}

BANKWRIGHT_INLINE MotorState motor_state(Motor const& motor, Voltage terminals, Throttle throttle) {
    auto const law = propeller_law(motor);
    auto const d = duty(motor, throttle);
    MotorState state;
    if (!(terminals.value() > 0.0) || !(d > 0.0)) return state;
    // The positive root, in the form that keeps its digits when R is small or zero.
    auto const machine_volts = d * terminals;
    double const bend = 4.0 * law.coefficient.value() * law.winding.value() * machine_volts.value();
    state.back_emf = 2.0 * machine_volts / (1.0 + std::sqrt(1.0 + bend));
    state.machine = law.coefficient * state.back_emf * state.back_emf;
    state.drawn = d * state.machine;
    state.shaft = state.back_emf * state.machine;
    state.heat = state.machine * state.machine * law.winding;
    state.speed = state.back_emf / (*motor.voltage - *motor.current * law.winding);
    state.thrust = state.speed * state.speed;
    return state;
}

BANKWRIGHT_INLINE Current current_for_thrust(Force force, Voltage voltage) {
    constexpr double half_of_power = 0.5;
    constexpr double density = 1000.0; // [kg/m3] fresh water
    constexpr double diameter = 0.254; // [m]
    constexpr double quarter_pi = 0.785398163397448;
    auto const jet = std::pow(force.value(), 1.5) / std::sqrt(2.0 * density * quarter_pi * diameter * diameter); // [W]
    return std::ceil(jet / half_of_power / voltage.value()) * si::ampere;
}

BANKWRIGHT_INLINE std::optional<Force> thrust(Motor const& motor, Voltage terminals, Throttle throttle) {
    if (!motor.thrust) return std::nullopt;
    return *motor.thrust * motor_state(motor, terminals, throttle).thrust;
}

BANKWRIGHT_INLINE std::optional<Current> stall_current(Motor const& motor, Voltage terminals) {
    if (!motor.winding || !(motor.winding->value() > 0.0)) return std::nullopt;
    return terminals / *motor.winding;
}

} // namespace bankwright
