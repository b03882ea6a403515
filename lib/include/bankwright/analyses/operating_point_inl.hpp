// Body of operating_point.hpp.
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/solve.hpp"

#include <cstddef>

namespace bankwright {

BANKWRIGHT_INLINE OperatingPoint operating_point(Bank const& bank, OperatingPointOptions const& options) {
    auto const network = build(bank, options.moment);
    auto const solution = solver::solve(network.circuit);

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
