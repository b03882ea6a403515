// Bodies of topology.hpp.
#pragma once

#include "bankwright/graph/union_find.hpp"
#include "bankwright/solver/topology.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE Topology topology(Circuit const& circuit) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    Topology t;

    UnionFind joined(circuit.nodes);
    for (Join const& j : circuit.joins)
        joined.unite(j.from, j.to);
    t.merged.assign(at(circuit.nodes), -1);
    for (int n = 0; n < circuit.nodes; ++n) { // a set is met at its lowest member first
        int const lowest = joined.find(n);
        t.merged[at(n)] = lowest == n ? t.merged_nodes++ : t.merged[at(lowest)];
    }

    UnionFind connected(t.merged_nodes);
    for (Branch const& b : circuit.branches)
        connected.unite(t.merged[at(b.from)], t.merged[at(b.to)]);
    int const reference = t.merged[at(circuit.reference)];
    std::vector<int> number(at(t.merged_nodes), -1); // by merged node that stands for an island
    number[at(connected.find(reference))] = 0;
    t.root.push_back(reference);
    for (int m = 0; m < t.merged_nodes; ++m) {
        int& island = number[at(connected.find(m))];
        if (island >= 0) continue;
        island = static_cast<int>(t.root.size());
        t.root.push_back(m);
    }
    t.island.reserve(at(circuit.nodes));
    for (int m : t.merged)
        t.island.push_back(number[at(connected.find(m))]);

    auto const add_line = [&](int from, int to) {
        t.lines.push_back({t.merged[at(from)], t.merged[at(to)]});
        return static_cast<int>(t.lines.size()) - 1;
    };
    t.lines.reserve(circuit.branches.size() + circuit.loads.size());
    t.branch_line.reserve(circuit.branches.size());
    for (Branch const& b : circuit.branches) {
        bool const loop = t.merged[at(b.from)] == t.merged[at(b.to)];
        t.branch_line.push_back(loop ? -1 : add_line(b.from, b.to));
    }
    for (Load const& l : circuit.loads) {
        Feed const feed = t.merged[at(l.plus)] == t.merged[at(l.minus)]   ? Feed::shorted
                          : t.island[at(l.plus)] != t.island[at(l.minus)] ? Feed::none
                                                                          : Feed::port;
        t.load_feed.push_back(feed);
        t.load_line.push_back(feed == Feed::port ? add_line(l.plus, l.minus) : -1);
    }
    return t;
}

} // namespace bankwright::solver
