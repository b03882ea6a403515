#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/wiring/unprotected_path.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace bankwright {

namespace internal {

class UnprotectedSearch {
public:
    explicit UnprotectedSearch(WiringGraph const& graph)
        : graph_(graph), at_(graph.terminals.size()), positive_(graph.terminals.size(), 0),
          negative_(graph.terminals.size(), 0) {
        for (std::size_t e = 0; e < graph.edges.size(); ++e) {
            auto const& edge = graph.edges[e];
            if (edge.kind == WiringEdgeKind::battery) {
                negative_[as_index(edge.from)] = 1;
                positive_[as_index(edge.to)] = 1;
            }
            if (!conducts_unprotected(edge)) continue;
            at_[as_index(edge.from)].push_back(static_cast<int>(e));
            at_[as_index(edge.to)].push_back(static_cast<int>(e));
        }
    }

    // Breadth first from a load's terminal to the nearest battery post of that sign; false if none is reached.
    bool reach(int start, std::vector<char> const& posts, std::vector<int>& edges) const {
        std::vector<int> came(at_.size(), -2); // edge that led here
        std::vector<int> queue(1, start);
        came[as_index(start)] = -1;
        for (std::size_t head = 0; head < queue.size(); ++head) {
            auto here = queue[head];
            if (posts[as_index(here)]) {
                while (came[as_index(here)] >= 0) {
                    auto const e = came[as_index(here)];
                    edges.push_back(e);
                    here = other_end(e, here);
                }
                return true;
            }
            for (auto const e : at_[as_index(here)]) {
                auto const there = other_end(e, here);
                if (came[as_index(there)] != -2) continue;
                came[as_index(there)] = e;
                queue.push_back(there);
            }
        }
        return false;
    }

    std::vector<char> const& positive_posts() const { return positive_; }
    std::vector<char> const& negative_posts() const { return negative_; }

private:
    bool conducts_unprotected(WiringEdge const& edge) const {
        if (edge.kind == WiringEdgeKind::conductor) return true;
        if (edge.kind != WiringEdgeKind::contact) return false;
        auto const kind = graph_.parts[as_index(edge.part)].kind;
        return kind != PartKind::breaker && kind != PartKind::fuse;
    }
    int other_end(int e, int terminal) const {
        auto const& edge = graph_.edges[as_index(e)];
        return edge.from == terminal ? edge.to : edge.from;
    }

    WiringGraph const& graph_;
    std::vector<std::vector<int>> at_;
    std::vector<char> positive_; // by terminal: a battery's positive post
    std::vector<char> negative_;
};

} // namespace internal

BANKWRIGHT_INLINE std::vector<UnprotectedPath> unprotected_paths(WiringGraph const& graph) {
    internal::UnprotectedSearch const search(graph);
    std::vector<UnprotectedPath> paths;
    for (std::size_t e = 0; e < graph.edges.size(); ++e) {
        auto const& load = graph.edges[e];
        if (load.kind != WiringEdgeKind::load && load.kind != WiringEdgeKind::charger) continue;
        UnprotectedPath path;
        path.load_edge = static_cast<int>(e);
        if (!search.reach(load.from, search.positive_posts(), path.edges)) continue;
        std::vector<int> unused;
        path.only_negative = !search.reach(load.to, search.negative_posts(), unused);
        paths.push_back(std::move(path));
    }
    return paths;
}

} // namespace bankwright
