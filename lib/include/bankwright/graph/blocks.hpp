// Which edges of a graph lie on a closed path together? Its blocks (biconnected components), found in one depth-first
// pass with a stack of edges. Method: Hopcroft and Tarjan, Algorithm 447, CACM 16 (1973) 372 (citation from memory).
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/edges_at.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace bankwright {

struct BlockEdge {
    int a = 0;
    int b = 0;
};

// Calls visit(std::vector<int> const& edges) for every block. Every edge is in exactly one; an edge on no closed path
// is a block by itself. No edge may join a node to itself.
template <class Visit>
void for_each_block(int nodes, std::vector<BlockEdge> const& edges, Visit const& visit) {
    solver::EdgesAt const around(as_index(nodes), edges.size(),
                                 [&](std::size_t e) { return std::pair(edges[e].a, edges[e].b); });
    struct Visited {
        int depth = -1;
        int low = 0;
    };
    struct Step {
        int node, came_by;
        std::size_t next; // of the node's edges
    };
    std::vector<Visited> visited(as_index(nodes));
    std::vector<char> seen(edges.size(), 0);
    std::vector<int> pending, block;
    std::vector<Step> path;
    pending.reserve(edges.size());
    path.reserve(as_index(nodes));
    block.reserve(edges.size());
    for (int root = 0; root < nodes; ++root) {
        if (visited[as_index(root)].depth >= 0) continue;
        visited[as_index(root)].depth = 0;
        path.push_back({root, -1, 0});
        while (!path.empty()) {
            auto& here = path.back();
            auto& own = visited[as_index(here.node)];
            if (auto const own_edges = around[here.node]; here.next < own_edges.size()) {
                auto const e = own_edges[here.next++];
                if (seen[as_index(e)]) continue;
                seen[as_index(e)] = 1;
                pending.push_back(e);
                auto const there = edges[as_index(e)].a == here.node ? edges[as_index(e)].b : edges[as_index(e)].a;
                auto& other = visited[as_index(there)];
                if (other.depth >= 0) {
                    own.low = std::min(own.low, other.depth);
                } else {
                    other.depth = other.low = own.depth + 1;
                    path.push_back({there, e, 0});
                }
                continue;
            }
            auto const done = here;
            path.pop_back();
            if (path.empty()) continue;
            auto& before = visited[as_index(path.back().node)];
            before.low = std::min(before.low, own.low);
            if (own.low < before.depth) continue;
            block.clear(); // everything since the edge that led here
            for (int e = -1; e != done.came_by;) {
                e = pending.back();
                pending.pop_back();
                block.push_back(e);
            }
            visit(block);
        }
    }
}

} // namespace bankwright
