// Which batteries lie across a charger's output?
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <cstddef>
#include <vector>

namespace bankwright {

// The battery edges on the ways up from the output's - to its +, along batteries from negative to positive post.
inline std::vector<int> batteries_across(std::vector<WiringEdge> const& edges, WiringVerdict const& verdict,
                                         WiringEdge const& output) {
    auto const spread = [&](int start, bool up) {
        std::vector<char> reached(as_index(verdict.groups), 0);
        std::vector<int> queue(1, start);
        reached[as_index(start)] = 1;
        for (std::size_t head = 0; head < queue.size(); ++head)
            for (auto const& e : edges) {
                if (e.removed || e.kind != WiringEdgeKind::battery) continue;
                auto const here = verdict.group_of(up ? e.from : e.to);
                auto const there = verdict.group_of(up ? e.to : e.from);
                if (here != queue[head] || reached[as_index(there)]) continue;
                reached[as_index(there)] = 1;
                queue.push_back(there);
            }
        return reached;
    };
    auto const from_below = spread(verdict.group_of(output.to), true);
    auto const from_above = spread(verdict.group_of(output.from), false);
    std::vector<int> across;
    for (std::size_t e = 0; e < edges.size(); ++e) {
        if (edges[e].removed || edges[e].kind != WiringEdgeKind::battery) continue;
        if (from_below[as_index(verdict.group_of(edges[e].from))] &&
            from_above[as_index(verdict.group_of(edges[e].to))])
            across.push_back(static_cast<int>(e));
    }
    return across;
}

} // namespace bankwright
