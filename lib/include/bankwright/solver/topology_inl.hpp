// Bodies of topology.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/union_find.hpp"
#include "bankwright/solver/topology.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE Topology topology(Circuit const& circuit) {
    Topology t;

    UnionFind joined(circuit.nodes);
    for (Join const& j : circuit.joins)
        joined.unite(j.from, j.to);
    t.merged.assign(as_index(circuit.nodes), -1);
    for (int n = 0; n < circuit.nodes; ++n) { // a set is met at its lowest member first
        int const lowest = joined.find(n);
        t.merged[as_index(n)] = lowest == n ? t.merged_nodes++ : t.merged[as_index(lowest)];
    }

    UnionFind connected(t.merged_nodes);
    for (Branch const& b : circuit.branches)
        connected.unite(t.merged[as_index(b.from)], t.merged[as_index(b.to)]);
    int const reference = t.merged[as_index(circuit.reference)];
    std::vector<int> number(as_index(t.merged_nodes), -1); // by merged node that stands for an island
    number[as_index(connected.find(reference))] = 0;
    t.root.push_back(reference);
    for (int m = 0; m < t.merged_nodes; ++m) {
        int& island = number[as_index(connected.find(m))];
        if (island >= 0) continue;
        island = static_cast<int>(t.root.size());
        t.root.push_back(m);
    }
    t.island.reserve(as_index(circuit.nodes));
    for (int m : t.merged)
        t.island.push_back(number[as_index(connected.find(m))]);

    auto const add_line = [&](int from, int to) {
        t.lines.push_back({t.merged[as_index(from)], t.merged[as_index(to)]});
        return static_cast<int>(t.lines.size()) - 1;
    };
    t.lines.reserve(circuit.branches.size() + circuit.loads.size());
    t.branch_line.reserve(circuit.branches.size());
    for (Branch const& b : circuit.branches) {
        bool const loop = t.merged[as_index(b.from)] == t.merged[as_index(b.to)];
        t.branch_line.push_back(loop ? -1 : add_line(b.from, b.to));
    }
    for (Load const& l : circuit.loads) {
        Feed const feed = t.merged[as_index(l.plus)] == t.merged[as_index(l.minus)]   ? Feed::shorted
                          : t.island[as_index(l.plus)] != t.island[as_index(l.minus)] ? Feed::none
                                                                                      : Feed::port;
        t.load_feed.push_back(feed);
        t.load_line.push_back(feed == Feed::port ? add_line(l.plus, l.minus) : -1);
    }
    return t;
}

} // namespace bankwright::solver
