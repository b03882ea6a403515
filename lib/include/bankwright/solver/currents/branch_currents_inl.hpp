// Bodies of branch_currents.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/union_find.hpp"
#include "bankwright/solver/currents/branch_currents.hpp"
#include "bankwright/solver/currents/forest_currents.hpp"

#include <algorithm>
#include <numeric>

namespace bankwright::solver {

BANKWRIGHT_INLINE BranchCurrents::BranchCurrents(Circuit const& circuit, Topology const& topology,
                                                 LinearNetwork const& network)
    : circuit_(circuit), topology_(topology), network_(network), in_forest_(circuit.branches.size(), 0) {
    auto const& branches = circuit.branches;
    auto const end = [&](int node) { return topology.merged[as_index(node)]; };
    std::vector<std::size_t> order(branches.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return branches[a].resistance < branches[b].resistance; });
    UnionFind reached(topology.merged_nodes);
    std::vector<Line> lines;
    std::vector<std::size_t> branch_of;
    lines.reserve(branches.size());
    branch_of.reserve(branches.size());
    for (std::size_t b : order) {
        if (!reached.unite(end(branches[b].from), end(branches[b].to))) continue;
        in_forest_[b] = 1;
        lines.push_back({end(branches[b].from), end(branches[b].to)});
        branch_of.push_back(b);
    }
    forest_ = forest_order(topology.merged_nodes, lines);
    for (ForestStep& step : forest_)
        step.line = branch_of[step.line];
}

BANKWRIGHT_INLINE std::vector<double> BranchCurrents::amps(std::vector<double> const& volts,
                                                           std::vector<double> const& load_amps) const {
    auto const& branches = circuit_.branches;
    auto const end = [&](int node) { return as_index(topology_.merged[as_index(node)]); };
    std::vector<double> drops, amps; // [V] over the resistance, [A]
    drops.reserve(branches.size());
    amps.reserve(branches.size());
    for (Branch const& b : branches) {
        drops.push_back(drop(volts[end(b.from)], volts[end(b.to)], b.emf));
        amps.push_back(drops.back() / b.resistance);
    }
    std::vector<double> leaving(as_index(topology_.merged_nodes));
    auto const settle_forest = [&] {
        std::fill(leaving.begin(), leaving.end(), 0.0);
        auto const carry = [&](int from, int to, double a) {
            leaving[end(from)] += a;
            leaving[end(to)] -= a;
        };
        for (std::size_t b = 0; b < branches.size(); ++b)
            if (!in_forest_[b]) carry(branches[b].from, branches[b].to, amps[b]);
        for (std::size_t l = 0; l < circuit_.loads.size(); ++l)
            carry(circuit_.loads[l].plus, circuit_.loads[l].minus, load_amps[l]);
        for (ForestStep const& step : forest_) {
            auto const gathered = leaving[as_index(step.end)];
            amps[step.line] = step.outward ? -gathered : gathered;
            leaving[as_index(step.other)] += gathered;
        }
    };
    settle_forest();

    std::vector<double> missed(topology_.lines.size(), 0.0);
    for (ForestStep const& step : forest_)
        missed[as_index(topology_.branch_line[step.line])] =
            drops[step.line] / branches[step.line].resistance - amps[step.line];
    std::vector<double> const correction = network_.rough_volts(missed);
    for (std::size_t b = 0; b < branches.size(); ++b) // a loop branch has no voltage and gets no correction
        amps[b] += (correction[end(branches[b].from)] - correction[end(branches[b].to)]) / branches[b].resistance;
    settle_forest();
    return amps;
}

BANKWRIGHT_INLINE std::vector<double> branch_currents(Circuit const& circuit, Topology const& topology,
                                                      LinearNetwork const& network, std::vector<double> const& volts,
                                                      std::vector<double> const& load_amps) {
    return BranchCurrents(circuit, topology, network).amps(volts, load_amps);
}

} // namespace bankwright::solver
