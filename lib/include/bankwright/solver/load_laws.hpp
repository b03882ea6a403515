// How does a load's current follow its voltage?
#pragma once

#include "bankwright/solver/circuit.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <variant>

namespace bankwright::solver {

// The numbers of a law, in their order; `visit_number` may read or change them.
template <class LawType, class Visit>
void for_each_number(LawType& law, Visit visit_number) {
    if (auto* current = std::get_if<ConstantCurrent>(&law)) visit_number(current->amperes);
    if (auto* power = std::get_if<ConstantPower>(&law)) visit_number(power->watts);
    if (auto* machine = std::get_if<SquareLaw>(&law)) {
        visit_number(machine->coefficient);
        visit_number(machine->resistance);
        visit_number(machine->duty);
    }
    if (auto* source = std::get_if<LimitedSource>(&law)) {
        visit_number(source->volts);
        visit_number(source->amperes);
    }
}

// A law of this kind with the numbers at `first`, `first + stride`, ...
inline Law with_numbers(Law law, double const* first, std::ptrdiff_t stride) {
    for_each_number(law, [&](double& number) {
        number = *first;
        first += stride;
    });
    return law;
}

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
