#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/edges_at.hpp"
#include "bankwright/wiring/battery_rings.hpp"
#include "bankwright/wiring/wiring_regions.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace bankwright {

namespace internal {

class RegionWalker {
public:
    explicit RegionWalker(WiringGraph const& graph, bool through_devices = false)
        : graph_(graph),
          at_(edges_at(graph, [&](WiringEdge const& e) { return through_devices || !is_device(graph, e); })),
          devices_at_(edges_at(graph, [&](WiringEdge const& e) { return !through_devices && is_device(graph, e); })),
          post_(graph.terminals.size(), 0) {
        for (auto const& edge : graph.edges) {
            if (edge.kind != WiringEdgeKind::battery) continue;
            post_[as_index(edge.from)] = '-';
            post_[as_index(edge.to)] = '+';
        }
    }

    // Terminals in the order in which a walk reaches them, and the edge by which it came (-1 at a start, -2 if never).
    struct Walk {
        std::vector<int> order;
        std::vector<int> came;

        bool reached(int terminal) const { return came[as_index(terminal)] != -2; }
    };
    Walk walk(std::vector<int> starts) const {
        Walk w{std::move(starts), std::vector<int>(graph_.terminals.size(), -2)};
        for (auto const start : w.order)
            w.came[as_index(start)] = -1;
        for (std::size_t head = 0; head < w.order.size(); ++head)
            for (auto const e : at_[w.order[head]]) {
                auto const there = other_end(e, w.order[head]);
                if (w.reached(there)) continue;
                w.came[as_index(there)] = e;
                w.order.push_back(there);
            }
        return w;
    }
    Walk walk(int start) const { return walk(std::vector<int>{start}); }
    Walk walk_from_posts(bool positive) const {
        std::vector<int> starts;
        for (std::size_t t = 0; t < graph_.terminals.size(); ++t)
            if (is_post(static_cast<int>(t), positive)) starts.push_back(static_cast<int>(t));
        return walk(std::move(starts));
    }

    int other_end(int e, int terminal) const {
        auto const& edge = graph_.edges[as_index(e)];
        return edge.from == terminal ? edge.to : edge.from;
    }

    // The first battery post of that sign on the walk, -1 if there is none.
    int first_post(Walk const& w, bool positive) const {
        auto const it = std::find_if(w.order.begin(), w.order.end(), [&](int t) { return is_post(t, positive); });
        return it == w.order.end() ? -1 : *it;
    }

    // From a terminal that the walk has reached back to its start.
    std::vector<int> path_to_start(Walk const& w, int terminal) const {
        std::vector<int> edges;
        while (w.reached(terminal) && w.came[as_index(terminal)] >= 0) {
            auto const e = w.came[as_index(terminal)];
            edges.push_back(e);
            terminal = other_end(e, terminal);
        }
        return edges;
    }

    std::span<int const> at(int terminal) const { return at_[terminal]; }
    std::span<int const> devices_at(int terminal) const { return devices_at_[terminal]; }

private:
    template <class Wanted>
    static solver::EdgesAt edges_at(WiringGraph const& graph, Wanted const& wanted) {
        return solver::EdgesAt(graph.terminals.size(), graph.edges.size(), [&](std::size_t e) {
            auto const& edge = graph.edges[e];
            bool const joins = edge.kind == WiringEdgeKind::conductor || edge.kind == WiringEdgeKind::contact;
            return joins && wanted(edge) ? std::pair(edge.from, edge.to) : std::pair(-1, -1);
        });
    }

    bool is_post(int terminal, bool positive) const { return post_[as_index(terminal)] == (positive ? '+' : '-'); }

    WiringGraph const& graph_;
    solver::EdgesAt at_;         // conductors and contacts
    solver::EdgesAt devices_at_; // breakers and fuses, where the walk stops at them
    std::vector<char> post_;     // by terminal: the sign of a battery's post, else 0
};

// By terminal: the device behind which it first comes on a walk on from a region, -1 in the region itself, -2 nowhere.
inline std::vector<int> next_devices(RegionWalker const& walker, RegionWalker::Walk const& region, int device_edge) {
    std::vector<int> gate(region.came.size(), -2);
    auto queue = region.order;
    for (auto const t : queue)
        gate[as_index(t)] = -1;
    for (std::size_t head = 0; head < queue.size(); ++head) {
        auto const here = queue[head];
        auto const before = gate[as_index(here)];
        auto const visit = [&](int e, int behind) {
            auto const there = walker.other_end(e, here);
            if (gate[as_index(there)] != -2) return;
            gate[as_index(there)] = behind;
            queue.push_back(there);
        };
        for (auto const e : walker.at(here))
            visit(e, before);
        for (auto const e : walker.devices_at(here))
            if (e != device_edge) visit(e, before == -1 ? e : before);
    }
    return gate;
}

} // namespace internal

BANKWRIGHT_INLINE ProtectedRegion protected_region(WiringGraph const& graph, int device_edge) {
    internal::RegionWalker const walker(graph);
    auto const& device = graph.edges[as_index(device_edge)];
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
        if (taken[as_index(e)] || graph.edges[as_index(e)].kind != WiringEdgeKind::conductor) return;
        taken[as_index(e)] = 1;
        region.conductors.push_back(e);
    };
    for (auto const terminal : far.order)
        for (auto const e : walker.at(terminal))
            take(e);

    auto const gates = internal::next_devices(walker, far, device_edge);
    auto const home = walker.walk_from_posts(false);
    std::vector<int> returns_behind(graph.edges.size(), -2); // by edge: the one device whose loads it serves; -2: none
    for (std::size_t e = 0; e < graph.edges.size(); ++e) {
        auto const& edge = graph.edges[e];
        if (edge.kind != WiringEdgeKind::load) continue;
        auto const gate = gates[as_index(edge.from)];
        if (gate == -2) continue;
        if (gate == -1) region.loads.push_back(static_cast<int>(e));
        for (auto const back : walker.path_to_start(home, edge.to)) {
            auto& only = returns_behind[as_index(back)];
            if (gate == -1 || (only != -2 && only != gate)) take(back);
            only = gate;
        }
    }
    return region;
}

BANKWRIGHT_INLINE std::optional<FeedPath> feed_path(WiringGraph const& graph, int device_edge) {
    internal::RegionWalker const walker(graph);
    auto const& device = graph.edges[as_index(device_edge)];
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

BANKWRIGHT_INLINE std::vector<int> supply_path(WiringGraph const& graph, int load_edge) {
    internal::RegionWalker const walker(graph, true);
    auto const& load = graph.edges[as_index(load_edge)];
    auto path = walker.path_to_start(walker.walk_from_posts(true), load.from);
    std::reverse(path.begin(), path.end());
    auto const back = walker.path_to_start(walker.walk_from_posts(false), load.to);
    path.insert(path.end(), back.begin(), back.end());
    return path;
}

BANKWRIGHT_INLINE std::vector<int> regions_without_device(WiringGraph const& graph) {
    internal::RegionWalker const walker(graph);
    std::vector<int> region(graph.terminals.size(), -1);
    for (std::size_t t = 0; t < region.size(); ++t) {
        if (region[t] >= 0) continue;
        std::vector<int> queue{static_cast<int>(t)};
        region[t] = queue.front();
        for (std::size_t head = 0; head < queue.size(); ++head)
            for (auto const e : walker.at(queue[head])) {
                auto const there = walker.other_end(e, queue[head]);
                if (std::exchange(region[as_index(there)], queue.front()) < 0) queue.push_back(there);
            }
    }
    return region;
}

} // namespace bankwright
