// Body of operating_point.hpp.
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/coupled_loads.hpp"
#include "bankwright/solver/solve.hpp"

namespace bankwright {

BANKWRIGHT_INLINE OperatingPoint operating_point(Bank const& bank, OperatingPointOptions const& options) {
    auto network = build(bank, options.moment);
    idle_converters(network);
    auto const solution = solve_coupled(network, [](solver::Circuit const& circuit) { return solver::solve(circuit); });

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
