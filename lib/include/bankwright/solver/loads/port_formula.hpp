// What does one load draw from a source of given voltage behind a given resistance? In closed form for every law.
#pragma once

#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/load_laws.hpp"

#include <cmath>
#include <limits>

namespace bankwright::solver {

// [A] for open-circuit `volts` [V] behind `ohms` [ohm]: of the two roots of V^2 - V0 V + R P = 0 the one of the higher
// voltage. Zero or reversed voltage feeds nothing; NaN if the power is more than the source has, V0^2 / 4 R.
inline double current_from(ConstantPower const& law, double volts, double ohms) {
    if (law.watts == 0.0 || volts <= 0.0) return 0.0;
    double const root = volts * volts - 4.0 * ohms * law.watts;
    if (root < 0.0) return std::numeric_limits<double>::quiet_NaN();
    return 2.0 * law.watts / (volts + std::sqrt(root));
}

} // namespace bankwright::solver
