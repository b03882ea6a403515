#pragma once

#include "bankwright/analyses/wiring_regions.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace bankwright {

class RegionWalker {
public:
    explicit RegionWalker(WiringGraph const& graph)
        : graph_(graph), at_(graph.terminals.size()), positive_(graph.terminals.size(), 0),
          negative_(graph.terminals.size(), 0) {
        for (std::size_t e = 0; e < graph.edges.size(); ++e) {
            auto const& edge = graph.edges[e];
            if (edge.kind == WiringEdgeKind::battery) {
                negative_[index(edge.from)] = 1;
                positive_[index(edge.to)] = 1;
            }
            bool const wire = edge.kind == WiringEdgeKind::conductor ||
                              (edge.kind == WiringEdgeKind::contact && !is_device(edge));
            if (!wire) continue;
            at_[index(edge.from)].push_back(static_cast<int>(e));
            at_[index(edge.to)].push_back(static_cast<int>(e));
        }
    }

    static std::size_t index(int i) { return static_cast<std::size_t>(i); }

    bool is_device(WiringEdge const& edge) const {
        auto const kind = graph_.parts[index(edge.part)].kind;
        return kind == PartKind::breaker || kind == PartKind::fuse;
    }

    // Terminals in the order in which a walk reaches them, and the edge by which it came (-1 for the start, -2 if never).
    struct Walk {
        std::vector<int> order;
        std::vector<int> came;
    };
    Walk walk(int start) const {
        Walk w{{start}, std::vector<int>(at_.size(), -2)};
        w.came[index(start)] = -1;
        for (std::size_t head = 0; head < w.order.size(); ++head)
            for (auto const e : at_[index(w.order[head])]) {
                auto const there = other_end(e, w.order[head]);
                if (w.came[index(there)] != -2) continue;
                w.came[index(there)] = e;
                w.order.push_back(there);
            }
        return w;
    }

    int other_end(int e, int terminal) const {
        auto const& edge = graph_.edges[index(e)];
        return edge.from == terminal ? edge.to : edge.from;
    }

    // The first battery post of that sign on the walk, -1 if there is none.
    int first_post(Walk const& w, bool positive) const {
        auto const& posts = positive ? positive_ : negative_;
        auto const it = std::find_if(w.order.begin(), w.order.end(), [&](int t) { return posts[index(t)] != 0; });
        return it == w.order.end() ? -1 : *it;
    }

    // From a terminal that the walk has reached back to its start.
    std::vector<int> path_to_start(Walk const& w, int terminal) const {
        std::vector<int> edges;
        while (w.came[index(terminal)] >= 0) {
            auto const e = w.came[index(terminal)];
            edges.push_back(e);
            terminal = other_end(e, terminal);
        }
        return edges;
    }

    std::vector<int> const& at(int terminal) const { return at_[index(terminal)]; }

private:
    WiringGraph const& graph_;
    std::vector<std::vector<int>> at_;
    std::vector<char> positive_; // by terminal: a battery's positive post
    std::vector<char> negative_;
};

BANKWRIGHT_INLINE ProtectedRegion protected_region(WiringGraph const& graph, int device_edge) {
    RegionWalker const walker(graph);
    auto const& device = graph.edges[RegionWalker::index(device_edge)];
    auto const line = walker.walk(device.from);
    auto const load = walker.walk(device.to);
    bool const line_is_fed = walker.first_post(line, true) >= 0;
    bool const load_is_fed = walker.first_post(load, true) >= 0;
    ProtectedRegion region;
    if (line_is_fed && load_is_fed) return region;
    // Behind another device neither side meets a post; then it is drawn as the trade draws it, from line to load.
    auto const& far = load_is_fed ? line : load;
    std::vector<char> taken(graph.edges.size(), 0);
    auto const take = [&](int e) {
        if (taken[RegionWalker::index(e)] || graph.edges[RegionWalker::index(e)].kind != WiringEdgeKind::conductor) return;
        taken[RegionWalker::index(e)] = 1;
        region.conductors.push_back(e);
    };
    for (auto const terminal : far.order)
        for (auto const e : walker.at(terminal)) take(e);
    for (std::size_t e = 0; e < graph.edges.size(); ++e) {
        auto const& edge = graph.edges[e];
        if (edge.kind != WiringEdgeKind::load || far.came[RegionWalker::index(edge.from)] == -2) continue;
        region.loads.push_back(static_cast<int>(e));
        auto const back = walker.walk(edge.to);
        auto const post = walker.first_post(back, false);
        if (post >= 0)
            for (auto const return_edge : walker.path_to_start(back, post)) take(return_edge);
    }
    return region;
}

BANKWRIGHT_INLINE std::optional<FeedPath> feed_path(WiringGraph const& graph, int device_edge) {
    RegionWalker const walker(graph);
    auto const& device = graph.edges[RegionWalker::index(device_edge)];
    std::optional<FeedPath> best;
    for (auto const side : {device.from, device.to}) {
        auto const walk = walker.walk(side);
        auto const post = walker.first_post(walk, true);
        if (post < 0) continue;
        auto edges = walker.path_to_start(walk, post);
        if (!best || edges.size() < best->edges.size()) best = FeedPath{std::move(edges), post};
    }
    return best;
}

BANKWRIGHT_INLINE bool joined_without_device(WiringGraph const& graph, int a, int b) {
    return RegionWalker(graph).walk(a).came[RegionWalker::index(b)] != -2;
}

} // namespace bankwright
