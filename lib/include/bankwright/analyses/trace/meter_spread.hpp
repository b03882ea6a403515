// What may a meter show where the circuit gives no exact answer, and how does a load follow its voltage?
#pragma once

#include "bankwright/solver/load_laws.hpp"

#include <cmath>
#include <variant>

namespace bankwright {

namespace internal::expecting {

inline constexpr double floating_volts = 0.02; // [V] what a meter may show between islands, common practice, no source
inline constexpr double unsolved_volts = 10.0; // [V] a bank that cannot feed its loads may read anything
inline constexpr double negligible_volts = 2e-5; // [V] far below a meter's last digit

// How a load's current follows its voltage around its operating point, as a conductance [S] that is never negative.
// Constant power falls with voltage; as a constant current it errs by little here, where only spreads are asked for.
inline double follow(solver::Law const& law, double amperes) {
    if (auto const* motor = std::get_if<solver::SquareLaw>(&law)) {
        if (!(motor->duty > 0.0 && motor->coefficient > 0.0 && amperes > 0.0)) return 0.0;
        double const back_emf = std::sqrt(amperes / (motor->duty * motor->coefficient)); // I = d c E^2
        return 2.0 * motor->duty * motor->duty * motor->coefficient * back_emf /
               (1.0 + 2.0 * motor->coefficient * back_emf * motor->resistance);
    }
    if (auto const* charger = std::get_if<solver::LimitedSource>(&law))
        return -amperes < charger->amperes * (1.0 - 1e-9) && amperes < 0.0 ? 1e3 : 0.0; // holds its voltage
    return 0.0;
}

} // namespace internal::expecting

} // namespace bankwright
