// Body of operating_point.hpp.
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <variant>

namespace bankwright {

namespace internal::operating {

// Solved again and again with every converter's input at what its output gives, until that stays: a supply is stiff, so
// each pass leaves a small part of the change before it.
inline solver::Solution solve(Network& network) {
    auto& circuit = network.circuit;
    for (auto const& coupling : network.couplings)
        circuit.loads[as_index(coupling.input)].law = solver::ConstantPower{0.0};
    auto solution = solver::solve(circuit);
    constexpr int most_passes = 100;
    constexpr double same = 1e-12; // of the power
    for (int pass = 0; pass < most_passes && solution.status == solver::Status::solved; ++pass) {
        bool moved = false;
        for (auto const& coupling : network.couplings) {
            auto const& output = circuit.loads[as_index(coupling.output)];
            auto const volts = solution.volts[as_index(output.plus)] - solution.volts[as_index(output.minus)];
            auto const given = -volts * solution.load_amps[as_index(coupling.output)]; // [W]
            auto& law = circuit.loads[as_index(coupling.input)].law;
            auto const before = std::get<solver::ConstantPower>(law).watts;
            auto const takes = std::max(0.0, given / coupling.efficiency);
            moved = moved || std::abs(takes - before) > same * std::max(1.0, takes);
            law = solver::ConstantPower{takes};
        }
        if (!moved) break;
        solution = solver::solve(circuit);
    }
    return solution;
}

} // namespace internal::operating

BANKWRIGHT_INLINE OperatingPoint operating_point(Bank const& bank, OperatingPointOptions const& options) {
    auto network = build(bank, options.moment);
    auto const solution = internal::operating::solve(network);

    OperatingPoint point;
    point.status = solution.status;
    if (!network.terminals.empty()) point.reference = network.terminals[as_index(network.circuit.reference)];
    point.terminals = read_terminals(network, solution);
    point.parts = read_parts(network, solution);
    point.residual = solution.residual * si::ampere;
    point.imbalance = solution.power_imbalance * si::watt;
    point.condition = solution.condition;
    if (solution.status == solver::Status::no_operating_point) point.reachable_share = solution.reachable_share;
    return point;
}

} // namespace bankwright
