#pragma once

#include "bankwright/analyses/prospective_current.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/readings.hpp"
#include "bankwright/solver/solve.hpp"

#include <cmath>

namespace bankwright {

namespace faults {

inline Moment moment(DevicesAre devices) {
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    moment.everything_closed = devices == DevicesAre::all_closed;
    moment.chargers = false;
    return moment;
}

inline std::optional<FaultCurrents> between(Network& network, int a, int b) {
    if (a == b) return std::nullopt;
    network.circuit.joins.push_back({a, b});
    auto const solution = solver::solve(network.circuit);
    if (solution.status != solver::Status::solved) return std::nullopt;
    return FaultCurrents{std::abs(solution.join_amps.back()) * si::ampere, read_parts(network, solution)};
}

} // namespace faults

BANKWRIGHT_INLINE std::optional<FaultCurrents> fault_currents(Bank const& bank, std::string const& terminal,
                                                              std::string const& against, DevicesAre devices) {
    auto network = build(bank, faults::moment(devices));
    return faults::between(network, node_of(network, terminal), node_of(network, against));
}

BANKWRIGHT_INLINE std::optional<BoltedFault> bolted_fault(Bank const& bank, std::string const& terminal,
                                                          std::string const& part) {
    auto network = build(bank, faults::moment(DevicesAre::all_closed));
    auto const fault = faults::between(network, node_of(network, terminal), network.circuit.reference);
    if (!fault) return std::nullopt;
    for (auto const& reading : fault->parts)
        if (reading.id == part) return BoltedFault{fault->total, std::abs(reading.current.value()) * si::ampere};
    part_of(network, part); // throws: no such part
    return std::nullopt;
}

} // namespace bankwright
