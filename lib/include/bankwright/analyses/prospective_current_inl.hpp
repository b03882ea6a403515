#pragma once

#include "bankwright/analyses/prospective_current.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/readings.hpp"
#include "bankwright/solver/solve.hpp"

#include <cmath>

namespace bankwright {

inline Moment idle(DevicesAre devices) {
    auto moment = bank_alone();
    moment.everything_closed = devices == DevicesAre::all_closed;
    return moment;
}

BANKWRIGHT_INLINE BoltedFaults::BoltedFaults(Bank const& bank) : network_(build(bank, idle(DevicesAre::all_closed))) {}

BANKWRIGHT_INLINE std::optional<BoltedFault> BoltedFaults::at(std::string const& terminal,
                                                              std::string const& part) const {
    auto const fault_at = node_of(network_, terminal);
    if (fault_at == network_.circuit.reference) return std::nullopt;
    auto circuit = network_.circuit;
    circuit.joins.push_back({fault_at, circuit.reference});
    auto const solution = solver::solve(circuit);
    if (solution.status != solver::Status::solved) return std::nullopt;
    auto const total = std::abs(solution.join_amps.back()) * si::ampere;
    auto const& through = part_of(network_, part); // throws: no such part
    if (through.elements.empty()) return std::nullopt;
    auto const amperes = std::abs(read_part(through, network_, solution).current.value());
    return BoltedFault{total, amperes * si::ampere};
}

BANKWRIGHT_INLINE std::optional<BoltedFault> bolted_fault(Bank const& bank, std::string const& terminal,
                                                          std::string const& part) {
    return BoltedFaults(bank).at(terminal, part);
}

BANKWRIGHT_INLINE std::optional<FaultCurrents> fault_currents(Bank const& bank, std::string const& terminal,
                                                              std::string const& against, DevicesAre devices) {
    auto network = build(bank, idle(devices));
    auto const a = node_of(network, terminal);
    auto const b = node_of(network, against);
    if (a == b) return std::nullopt;
    network.circuit.joins.push_back({a, b});
    auto const solution = solver::solve(network.circuit);
    if (solution.status != solver::Status::solved) return std::nullopt;
    return FaultCurrents{std::abs(solution.join_amps.back()) * si::ampere, read_parts(network, solution)};
}

} // namespace bankwright
