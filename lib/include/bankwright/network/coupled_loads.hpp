// What draws by what the answer itself says: the input of a converter takes what its output gives, and a motor's
// control lets no more through than its max_current.
//
// The circuit is solved again and again with these loads as the last answer has them, until that stays: a supply is
// stiff, so each pass leaves a small part of the change before it.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/solver/load_laws.hpp"
#include "bankwright/solver/solution.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

namespace bankwright {

namespace internal::coupling_loads {

inline double volts_of(solver::Circuit const& circuit, solver::Solution const& solution, int load) {
    auto const& at = circuit.loads[as_index(load)];
    return solution.volts[as_index(at.plus)] - solution.volts[as_index(at.minus)];
}

// True: the load is another than before.
inline bool follow(Coupling const& coupling, solver::Circuit& circuit, solver::Solution const& solution) {
    constexpr double same = 1e-12; // of the power
    auto const given =
        -volts_of(circuit, solution, coupling.output) * solution.load_amps[as_index(coupling.output)]; // [W]
    auto& law = circuit.loads[as_index(coupling.input)].law;
    auto const before = std::get<solver::ConstantPower>(law).watts;
    auto const takes = std::max(0.0, given / coupling.efficiency);
    law = solver::ConstantPower{takes};
    return std::abs(takes - before) > same * std::max(1.0, takes);
}

inline bool follow(HeldMotor const& motor, solver::Circuit& circuit, solver::Solution const& solution) {
    constexpr double same = 1e-12; // of the current
    auto const volts = volts_of(circuit, solution, motor.load);
    auto& law = circuit.loads[as_index(motor.load)].law;
    bool const was_held = std::holds_alternative<solver::ConstantCurrent>(law);
    bool const held = solver::current(motor.free, volts) > motor.most * (1.0 + same);
    if (held)
        law = solver::ConstantCurrent{motor.most};
    else
        law = motor.free;
    return held != was_held;
}

} // namespace internal::coupling_loads

// `solve_once(circuit)` gives a solver::Solution. With neither in the network that is all.
template <class SolveOnce>
solver::Solution solve_coupled(Network& network, SolveOnce const& solve_once) {
    auto solution = solve_once(network.circuit);
    constexpr int most_passes = 100;
    for (int pass = 0; pass < most_passes && solution.status == solver::Status::solved; ++pass) {
        bool moved = false;
        for (auto const& coupling : network.couplings)
            moved = internal::coupling_loads::follow(coupling, network.circuit, solution) || moved;
        for (auto const& motor : network.held)
            moved = internal::coupling_loads::follow(motor, network.circuit, solution) || moved;
        if (!moved) break;
        solution = solve_once(network.circuit);
    }
    return solution;
}

// What solve_coupled() begins with: every converter idle.
inline void idle_converters(Network& network) {
    for (auto const& coupling : network.couplings)
        network.circuit.loads[as_index(coupling.input)].law = solver::ConstantPower{0.0};
}

inline bool is_coupled(Network const& network) { return !network.couplings.empty() || !network.held.empty(); }

} // namespace bankwright
