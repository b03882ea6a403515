#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/wiring/wiring_loop.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>
#include <utility>

namespace bankwright {

namespace internal {

// Dijkstra from the battery's positive post back to its negative one; a battery costs more than all conductors
// together. A shortest path that cancels the battery says nothing, so batteries that cancel it alone are left out one
// by one.
class LoopSearch {
public:
    LoopSearch(WiringGraph const& graph, std::vector<WiringEdge> const& edges)
        : edges_(edges), at_(graph.terminals.size()), battery_cost_(static_cast<int>(edges.size()) + 1) {
        for (std::size_t e = 0; e < edges.size(); ++e) {
            auto const kind = edges[e].kind;
            if (edges[e].removed || kind == WiringEdgeKind::load || kind == WiringEdgeKind::charger) continue;
            at_[as_index(edges[e].from)].push_back(static_cast<int>(e));
            at_[as_index(edges[e].to)].push_back(static_cast<int>(e));
        }
    }

    std::optional<WiringLoop> through(int battery_edge) const {
        std::vector<char> barred(edges_.size(), 0);
        barred[as_index(battery_edge)] = 1;
        for (int attempt = 0; attempt < most_attempts; ++attempt) {
            auto loop = shortest(battery_edge, barred);
            if (loop.steps.empty()) return std::nullopt;
            if (std::abs(loop.volts) > same_volts) return loop;
            for (auto step = loop.steps.rbegin(); step != loop.steps.rend(); ++step) {
                if (edges_[as_index(step->edge)].kind != WiringEdgeKind::battery) continue;
                barred[as_index(step->edge)] = 1;
                break;
            }
        }
        return std::nullopt;
    }

private:
    static constexpr int most_attempts = 32; // parallel strings that agree with it, each left out in turn

    WiringLoop shortest(int battery_edge, std::vector<char> const& barred) const {
        auto const& battery = edges_[as_index(battery_edge)];
        std::vector<int> cost(at_.size(), std::numeric_limits<int>::max());
        std::vector<LoopStep> came(at_.size());
        using Item = std::pair<int, int>;
        std::priority_queue<Item, std::vector<Item>, std::greater<>> queue;
        cost[as_index(battery.to)] = 0;
        queue.emplace(0, battery.to);
        while (!queue.empty()) {
            auto const [here_cost, here] = queue.top();
            queue.pop();
            if (here == battery.from) break;
            if (here_cost > cost[as_index(here)]) continue;
            for (auto const e : at_[as_index(here)]) {
                auto const& edge = edges_[as_index(e)];
                if (barred[as_index(e)]) continue;
                auto const forward = edge.from == here;
                auto const there = forward ? edge.to : edge.from;
                auto const there_cost = here_cost + (edge.kind == WiringEdgeKind::battery ? battery_cost_ : 1);
                if (there_cost >= cost[as_index(there)]) continue;
                cost[as_index(there)] = there_cost;
                came[as_index(there)] = {e, forward};
                queue.emplace(there_cost, there);
            }
        }
        WiringLoop loop;
        if (cost[as_index(battery.from)] == std::numeric_limits<int>::max()) return loop;
        for (auto here = battery.from; here != battery.to;) {
            auto const step = came[as_index(here)];
            auto const& edge = edges_[as_index(step.edge)];
            loop.steps.push_back(step);
            if (edge.kind == WiringEdgeKind::battery) loop.volts += step.forward ? edge.volts : -edge.volts;
            here = step.forward ? edge.from : edge.to;
        }
        loop.steps.push_back({battery_edge, true});
        loop.volts += battery.volts;
        std::reverse(loop.steps.begin(), loop.steps.end());
        return loop;
    }

    std::vector<WiringEdge> const& edges_;
    std::vector<std::vector<int>> at_;
    int battery_cost_;
};

} // namespace internal

BANKWRIGHT_INLINE std::optional<WiringLoop> shortest_loop(WiringGraph const& graph,
                                                          std::vector<WiringEdge> const& edges, int battery_edge) {
    return internal::LoopSearch(graph, edges).through(battery_edge);
}

BANKWRIGHT_INLINE std::string describe(WiringGraph const& graph, std::vector<WiringEdge> const& edges,
                                       WiringLoop const& loop) {
    std::string text;
    for (auto const& step : loop.steps) {
        auto const& edge = edges[as_index(step.edge)];
        bool const drawn = as_index(step.edge) < graph.edges.size();
        text += "`" + graph.name(step.forward ? edge.from : edge.to) + "` -" +
                (drawn ? graph.id(edge) : std::string("the missing conductor")) + "- ";
    }
    auto const& first = edges[as_index(loop.steps.front().edge)];
    return text + "`" + graph.name(first.from) + "`";
}

} // namespace bankwright
