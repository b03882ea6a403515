// Bodies of shorted_network.hpp.
#pragma once

#include "bankwright/analyses/short_circuit/shorted_network.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/union_find.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/readings.hpp"
#include "bankwright/solver/solve.hpp"

#include <cmath>

namespace bankwright {

namespace internal {

// To two nodes of its own, where nothing drives a current through it; the other elements keep their numbers.
inline void move_out(solver::Circuit& circuit, Element const& element) {
    auto const ends = circuit.nodes;
    circuit.nodes += 2;
    auto const moved = [&](auto& one) {
        one.from = ends;
        one.to = ends + 1;
    };
    if (element.is == Element::Is::branch) moved(circuit.branches[as_index(element.index)]);
    if (element.is == Element::Is::join) moved(circuit.joins[as_index(element.index)]);
}

// Without the short: a path that could feed it. A short that is the only way between two islands carries nothing.
inline bool hang_together(solver::Circuit const& circuit, int a, int b) {
    solver::UnionFind connected(circuit.nodes);
    for (auto const& branch : circuit.branches)
        connected.unite(branch.from, branch.to);
    for (auto const& join : circuit.joins)
        connected.unite(join.from, join.to);
    return connected.find(a) == connected.find(b);
}

} // namespace internal

BANKWRIGHT_INLINE ShortedNetwork::ShortedNetwork(Bank const& bank) : network_(build(bank, bank_alone())) {}

BANKWRIGHT_INLINE std::optional<ShortCurrents> ShortedNetwork::between(std::string const& terminal,
                                                                       std::string const& against,
                                                                       std::vector<std::string> const& open) const {
    auto const a = node_of(network_, terminal);
    auto const b = node_of(network_, against);
    if (a == b) return std::nullopt;
    auto circuit = network_.circuit;
    for (auto const& id : open)
        for (auto const& element : part_of(network_, id).elements)
            internal::move_out(circuit, element);
    if (!internal::hang_together(circuit, a, b)) return ShortCurrents{};
    circuit.joins.push_back({a, b});
    auto const solution = solver::solve(circuit);
    if (solution.status != solver::Status::solved) return std::nullopt;
    ShortCurrents carried{std::abs(solution.join_amps.back()) * si::ampere, {}};
    for (auto const& part : network_.parts)
        if (part.elements.size() == 1 && part.elements.front().is != Element::Is::gap)
            carried.parts.emplace(part.id, read_part(part, network_, solution).current);
    return carried;
}

} // namespace bankwright
