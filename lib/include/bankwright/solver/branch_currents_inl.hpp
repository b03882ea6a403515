// Bodies of branch_currents.hpp.
#pragma once

#include <algorithm>
#include <numeric>

#include "bankwright/solver/branch_currents.hpp"
#include "bankwright/solver/forest_currents.hpp"
#include "bankwright/solver/union_find.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE std::vector<double> branch_currents(Circuit const& circuit, Topology const& topology,
                                                      LinearNetwork const& network, std::vector<double> const& volts,
                                                      std::vector<double> const& load_amps) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    auto const& branches = circuit.branches;
    auto const end = [&](int node) { return topology.merged[at(node)]; };

    std::vector<std::size_t> order(branches.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        auto const x = branches[a].resistance, y = branches[b].resistance;
        return x != y ? x < y : a < b;
    });
    UnionFind reached(topology.merged_nodes);
    std::vector<Line> forest;
    std::vector<std::size_t> forest_branch;
    std::vector<char> in_forest(branches.size(), 0);
    forest.reserve(branches.size());
    forest_branch.reserve(branches.size());
    for (std::size_t b : order) {
        if (!reached.unite(end(branches[b].from), end(branches[b].to))) continue;
        in_forest[b] = 1;
        forest.push_back({end(branches[b].from), end(branches[b].to)});
        forest_branch.push_back(b);
    }

    std::vector<double> drops, amps; // [V] over the resistance, [A]
    drops.reserve(branches.size());
    amps.reserve(branches.size());
    for (Branch const& b : branches) {
        drops.push_back(drop(volts[at(end(b.from))], volts[at(end(b.to))], b.emf));
        amps.push_back(drops.back() / b.resistance);
    }
    auto const settle_forest = [&] {
        std::vector<double> leaving(at(topology.merged_nodes), 0.0);
        auto const carry = [&](int from, int to, double a) {
            leaving[at(end(from))] += a;
            leaving[at(end(to))] -= a;
        };
        for (std::size_t b = 0; b < branches.size(); ++b)
            if (!in_forest[b]) carry(branches[b].from, branches[b].to, amps[b]);
        for (std::size_t l = 0; l < circuit.loads.size(); ++l)
            carry(circuit.loads[l].plus, circuit.loads[l].minus, load_amps[l]);
        std::vector<double> const settled = forest_currents(topology.merged_nodes, forest, leaving).amps;
        for (std::size_t i = 0; i < forest.size(); ++i)
            amps[forest_branch[i]] = settled[i];
    };
    settle_forest();

    std::vector<double> missed(topology.lines.size(), 0.0);
    for (std::size_t b : forest_branch)
        missed[at(topology.branch_line[b])] = drops[b] / branches[b].resistance - amps[b];
    std::vector<double> const correction = network.rough_volts(missed);
    for (std::size_t b = 0; b < branches.size(); ++b) // a loop branch has no voltage and gets no correction
        amps[b] +=
            (correction[at(end(branches[b].from))] - correction[at(end(branches[b].to))]) / branches[b].resistance;
    settle_forest();
    return amps;
}

} // namespace bankwright::solver
