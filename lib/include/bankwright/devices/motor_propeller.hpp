// What does a DC motor with a propeller draw and push at a voltage and a throttle?
//
// V = k w + I R, torque k I, and a propeller's torque goes as w2; so with the back-EMF E = k w the machine takes c E2,
// and the nameplate gives c = I / (V - I R)2. A chopper of duty d puts d V on the machine and draws d times its
// current:
//     E + c E2 R = d V,   machine current c E2,   current drawn d c E2
// k itself, and so the speed, drops out: the nameplate does not tell it, and nothing here needs it.
#pragma once

#include "bankwright/devices/motor.hpp"

#include <optional>

namespace bankwright {

using CurrentPerSquareVolt = boost::units::quantity<boost::units::divide_typeof_helper<
    si::current,
    boost::units::power_typeof_helper<si::electric_potential, boost::units::static_rational<2>>::type>::type>;

struct PropellerLaw {
    CurrentPerSquareVolt coefficient; // c
    Resistance winding;               // R
};

// From `voltage`, `current` and `winding` (0 unless stated). Throws std::invalid_argument naming the missing key, or
// `winding` if the nameplate current would lose all of the nameplate voltage in it.
PropellerLaw propeller_law(Motor const&);

// Duty of the speed control at a throttle: the throttle itself behind a chopper; off or full where there is none.
double duty(Motor const&, Throttle);

struct MotorState {
    Current drawn;     // from the bank
    Current machine;   // in the winding
    Voltage back_emf;  // E
    Power shaft;       // E x machine current; friction is in the propeller's law
    Power heat;        // in the winding
    double speed = 0;  // over that at the nameplate voltage and full throttle
    double thrust = 0; // likewise; static thrust goes as the speed squared
};
MotorState motor_state(Motor const&, Voltage terminals, Throttle); // zero for a voltage <= 0

// Static thrust, where the nameplate states it.
std::optional<Force> thrust(Motor const&, Voltage terminals, Throttle);

// What a motor of this thrust may be taken to draw, in whole amperes, where its nameplate states no current: a
// propeller of 10 in turns half of the power drawn into its jet (common practice, no source), and the jet of a disk A
// at rest in water of density rho takes F^1.5 / sqrt(2 rho A) (momentum theory of the actuator disk, from memory).
Current current_for_thrust(Force, Voltage);

// What a standing rotor draws from the full voltage; unknown without `winding`.
std::optional<Current> stall_current(Motor const&, Voltage terminals);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/motor_propeller_inl.hpp"
#endif
