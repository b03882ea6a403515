// How does a load's current follow its voltage?
#pragma once

#include <algorithm>
#include <cmath>

#include "bankwright/solver/circuit.hpp"

namespace bankwright::solver {

// [V] a square-law machine's back voltage E behind its chopper: the root of E + c R E^2 = d V, written so that nothing
// cancels. 0 for V <= 0.
inline double back_voltage(SquareLaw const& law, double volts) {
    if (!(volts > 0.0)) return 0.0;
    double const driven = law.duty * volts;
    return 2.0 * driven / (1.0 + std::sqrt(1.0 + 4.0 * law.coefficient * law.resistance * driven));
}

// [A] drawn at `volts` [V].
inline double current(SquareLaw const& law, double volts) {
    double const back = back_voltage(law, volts);
    return law.duty * law.coefficient * back * back;
}

// [S] rise of that current with the voltage.
inline double slope(SquareLaw const& law, double volts) {
    double const back = back_voltage(law, volts);
    return 2.0 * law.duty * law.duty * law.coefficient * back / (1.0 + 2.0 * law.coefficient * law.resistance * back);
}

// [A] drawn from a source of `volts` [V] behind `ohms` [ohm]: I = d c E^2 with E (1 + c R E) / d = volts - ohms I.
inline double current_from(SquareLaw const& law, double volts, double ohms) {
    if (!(volts > 0.0) || law.duty == 0.0) return 0.0;
    double const driven = law.duty * volts;
    double const total = law.resistance + ohms * law.duty * law.duty;
    double const back = 2.0 * driven / (1.0 + std::sqrt(1.0 + 4.0 * law.coefficient * total * driven));
    return law.duty * law.coefficient * back * back;
}

// The same for a limited source: what holds its terminals at its voltage, between its limit and nothing.
inline double current_from(LimitedSource const& law, double volts, double ohms) {
    return std::clamp((volts - law.volts) / ohms, -law.amperes, 0.0);
}

} // namespace bankwright::solver
