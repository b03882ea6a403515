// Which edges of a graph lie on a closed path together? Its blocks (biconnected components), found in one depth-first
// pass with a stack of edges. Method: Hopcroft and Tarjan, Algorithm 447, CACM 16 (1973) 372 (citation from memory).
#pragma once

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
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    solver::EdgesAt const around(at(nodes), edges.size(),
                                 [&](std::size_t e) { return std::pair(edges[e].a, edges[e].b); });
    struct Visited {
        int depth = -1;
        int low = 0;
    };
    struct Step {
        int node, came_by;
        std::size_t next; // of the node's edges
    };
    std::vector<Visited> visited(at(nodes));
    std::vector<char> seen(edges.size(), 0);
    std::vector<int> pending, block;
    std::vector<Step> path;
    pending.reserve(edges.size());
    path.reserve(at(nodes));
    block.reserve(edges.size());
    for (int root = 0; root < nodes; ++root) {
        if (visited[at(root)].depth >= 0) continue;
        visited[at(root)].depth = 0;
        path.push_back({root, -1, 0});
        while (!path.empty()) {
            auto& here = path.back();
            auto& own = visited[at(here.node)];
            if (auto const own_edges = around[here.node]; here.next < own_edges.size()) {
                auto const e = own_edges[here.next++];
                if (seen[at(e)]) continue;
                seen[at(e)] = 1;
                pending.push_back(e);
                auto const there = edges[at(e)].a == here.node ? edges[at(e)].b : edges[at(e)].a;
                auto& other = visited[at(there)];
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
            auto& before = visited[at(path.back().node)];
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
