// Which edges of a graph lie on a closed path together? Its blocks (biconnected components), found in one depth-first
// pass with a stack of edges. Method: Hopcroft and Tarjan, Algorithm 447, CACM 16 (1973) 372 (citation from memory).
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

namespace bankwright {

struct BlockEdge {
    int a = 0;
    int b = 0;
};

// Every edge is in exactly one block; an edge on no closed path is a block by itself. No edge may join a node to
// itself.
inline std::vector<std::vector<int>> blocks(int nodes, std::vector<BlockEdge> const& edges) {
    auto const n = static_cast<std::size_t>(nodes);
    std::vector<std::size_t> first(n + 1, 0); // by node: where its edges begin in `at`
    for (auto const& edge : edges)
        for (auto const end : {edge.a, edge.b})
            ++first[static_cast<std::size_t>(end) + 1];
    for (std::size_t v = 0; v < n; ++v)
        first[v + 1] += first[v];
    std::vector<int> at(2 * edges.size());
    auto fill = first;
    for (std::size_t e = 0; e < edges.size(); ++e)
        for (auto const end : {edges[e].a, edges[e].b})
            at[fill[static_cast<std::size_t>(end)]++] = static_cast<int>(e);
    struct Visit {
        int node, came_by;
        std::size_t next;
    };
    std::vector<int> depth(n, -1);
    std::vector<int> low(n, 0);
    std::vector<char> seen(edges.size(), 0);
    std::vector<int> pending;
    std::vector<Visit> path;
    std::vector<std::vector<int>> found;
    for (int root = 0; root < nodes; ++root) {
        if (depth[static_cast<std::size_t>(root)] >= 0) continue;
        depth[static_cast<std::size_t>(root)] = 0;
        path.push_back({root, -1, first[static_cast<std::size_t>(root)]});
        while (!path.empty()) {
            auto& here = path.back();
            auto const v = static_cast<std::size_t>(here.node);
            if (here.next < first[v + 1]) {
                auto const e = at[here.next++];
                if (seen[static_cast<std::size_t>(e)]) continue;
                seen[static_cast<std::size_t>(e)] = 1;
                pending.push_back(e);
                auto const& edge = edges[static_cast<std::size_t>(e)];
                auto const w = edge.a == here.node ? edge.b : edge.a;
                auto const wi = static_cast<std::size_t>(w);
                if (depth[wi] >= 0) {
                    low[v] = std::min(low[v], depth[wi]);
                } else {
                    depth[wi] = low[wi] = depth[v] + 1;
                    path.push_back({w, e, first[wi]});
                }
                continue;
            }
            auto const done = here;
            path.pop_back();
            if (path.empty()) continue;
            auto const u = static_cast<std::size_t>(path.back().node);
            low[u] = std::min(low[u], low[v]);
            if (low[v] < depth[u]) continue;
            std::vector<int> block; // everything since the edge that led here
            for (int e = -1; e != done.came_by;) {
                e = pending.back();
                pending.pop_back();
                block.push_back(e);
            }
            found.push_back(std::move(block));
        }
    }
    return found;
}

} // namespace bankwright
