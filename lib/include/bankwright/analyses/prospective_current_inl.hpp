#pragma once

#include "bankwright/analyses/prospective_current.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/readings.hpp"
#include "bankwright/solver/balance.hpp"
#include "bankwright/solver/join_currents.hpp"
#include "bankwright/solver/solve.hpp"

#include <cmath>

namespace bankwright {

namespace internal {

inline Moment all_closed() {
    auto moment = bank_alone();
    moment.everything_closed = true;
    return moment;
}

inline std::vector<solver::NodePair> against_reference(solver::Circuit const& circuit) {
    std::vector<solver::NodePair> pairs;
    for (int node = 0; node < circuit.nodes; ++node)
        pairs.push_back({node, circuit.reference});
    return pairs;
}

} // namespace internal

BANKWRIGHT_INLINE BoltedShorts::BoltedShorts(Bank const& bank)
    : network_(build(bank, internal::all_closed())),
      small_(network_.circuit, internal::against_reference(network_.circuit), solver::LoadsDo::hold, {}) {}

// What flows once a short holds the node at the reference's voltage: its own current is the last load's.
BANKWRIGHT_INLINE solver::Solution BoltedShorts::with_short(int node) {
    auto const pair = as_index(node);
    auto solution = small_.operating_point();
    auto const loads = network_.circuit.loads.size();
    solution.load_amps.resize(loads);
    solution.load_amps.push_back(0.0);
    if (small_.feed(pair) != solver::Feed::port) return solution; // nothing feeds it from here
    if (drawn_at_ != small_.merged(node)) {
        drawn_ = small_.draw(pair);
        drawn_at_ = small_.merged(node);
    }
    auto const amps = -solution.volts[pair] / drawn_.pair_volts[pair]; // a load lowers its own voltage
    solution.load_amps.back() = amps;
    for (std::size_t n = 0; n < solution.volts.size(); ++n)
        solution.volts[n] += amps * drawn_.pair_volts[n];
    for (std::size_t b = 0; b < solution.branch_amps.size(); ++b)
        solution.branch_amps[b] += amps * drawn_.branch_amps[b];
    auto circuit = network_.circuit;
    circuit.loads.push_back({node, circuit.reference, solver::ConstantCurrent{amps}});
    solution.join_amps = solver::join_currents(circuit, solver::leaving_currents(circuit, solution),
                                               solver::SolveOptions{}.star_mesh_limit);
    return solution;
}

BANKWRIGHT_INLINE std::optional<BoltedShort> BoltedShorts::at(std::string const& terminal, std::string const& part) {
    auto const node = node_of(network_, terminal);
    auto const& through = part_of(network_, part); // throws: no such part
    if (node == network_.circuit.reference || through.elements.empty()) return std::nullopt;
    if (small_.operating_point().status != solver::Status::solved) return std::nullopt;
    if (small_.feed(as_index(node)) == solver::Feed::shorted) return std::nullopt; // no different point
    auto const solution = with_short(node);
    return BoltedShort{std::abs(solution.load_amps.back()) * si::ampere,
                       std::abs(read_part(through, network_, solution).current.value()) * si::ampere};
}

} // namespace bankwright
