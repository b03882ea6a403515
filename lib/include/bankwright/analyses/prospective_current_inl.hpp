#pragma once

#include "bankwright/analyses/prospective_current.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/readings.hpp"
#include "bankwright/solver/solve.hpp"

#include <cmath>

namespace bankwright {

BANKWRIGHT_INLINE std::optional<BoltedFault> bolted_fault(Bank const& bank, std::string const& terminal,
                                                          std::string const& part) {
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    moment.everything_closed = true;
    moment.chargers = false;
    auto network = build(bank, moment);
    auto const fault_at = node_of(network, terminal);
    if (fault_at == network.circuit.reference) return std::nullopt;
    network.circuit.joins.push_back({fault_at, network.circuit.reference});
    auto const solution = solver::solve(network.circuit);
    if (solution.status != solver::Status::solved) return std::nullopt;
    auto const total = std::abs(solution.join_amps.back()) * si::ampere;
    for (auto const& reading : read_parts(network, solution))
        if (reading.id == part) return BoltedFault{total, std::abs(reading.current.value()) * si::ampere};
    part_of(network, part); // throws: no such part
    return std::nullopt;
}

} // namespace bankwright
