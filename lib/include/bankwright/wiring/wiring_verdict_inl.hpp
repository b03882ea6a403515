#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/blocks.hpp"
#include "bankwright/graph/edges_at.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace bankwright {

namespace internal {

class WiringJudge {
public:
    WiringJudge(WiringGraph const& graph, std::vector<WiringEdge> const& edges) : graph_(graph), edges_(edges) {}

    WiringVerdict judge(std::size_t most_wrongs) {
        group_terminals();
        carry_potentials();
        if (verdict_.shorted.size() + verdict_.clashes.size() > most_wrongs) return std::move(verdict_);
        std::vector<char> used = on_closed_paths();
        bool any_load = false;
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            if (edges_[e].removed || edges_[e].kind != WiringEdgeKind::load) continue;
            any_load = true;
            verdict_.loads.push_back(judge_load(static_cast<int>(e), used[e] != 0));
        }
        for (std::size_t e = 0; e < edges_.size(); ++e)
            if (any_load && is_battery(e) && !used[e] && from_group(e) != to_group(e))
                verdict_.unused.push_back(static_cast<int>(e));
        count_marking_faults();
        return std::move(verdict_);
    }

private:
    bool is_battery(std::size_t e) const { return !edges_[e].removed && edges_[e].kind == WiringEdgeKind::battery; }
    int from_group(std::size_t e) const { return verdict_.group_of(edges_[e].from); }
    int to_group(std::size_t e) const { return verdict_.group_of(edges_[e].to); }
    double& potential(int group) { return verdict_.potential[as_index(group)]; }
    int& island(int group) { return verdict_.island[as_index(group)]; }

    void group_terminals() {
        auto& up = verdict_.group; // first a terminal of the same group that is not later, then the group's number
        up.resize(graph_.terminals.size());
        std::iota(up.begin(), up.end(), 0);
        auto const root = [&](int t) {
            while (up[as_index(t)] != t)
                t = up[as_index(t)] = up[as_index(up[as_index(t)])];
            return t;
        };
        for (auto const& e : edges_) {
            if (e.removed || (e.kind != WiringEdgeKind::conductor && e.kind != WiringEdgeKind::contact)) continue;
            auto const [earlier, later] = std::minmax({root(e.from), root(e.to)});
            up[as_index(later)] = earlier;
        }
        for (std::size_t t = 0; t < up.size(); ++t)
            up[t] = as_index(up[t]) == t ? verdict_.groups++ : up[as_index(up[t])];
    }

    // Breadth first from each group not yet reached; an edge that leads to a group already reached must agree.
    void carry_potentials() {
        auto const groups = as_index(verdict_.groups);
        verdict_.potential.assign(groups, 0.0);
        verdict_.island.assign(groups, -1);
        for (std::size_t e = 0; e < edges_.size(); ++e)
            if (is_battery(e) && from_group(e) == to_group(e)) verdict_.shorted.push_back(static_cast<int>(e));
        solver::EdgesAt const batteries_at(groups, edges_.size(), [&](std::size_t e) {
            bool const counts = is_battery(e) && from_group(e) != to_group(e);
            return counts ? std::pair(from_group(e), to_group(e)) : std::pair(-1, -1);
        });
        std::vector<int> queue;
        int islands = 0;
        for (int start = 0; start < verdict_.groups; ++start) {
            if (island(start) >= 0) continue;
            queue.assign(1, start);
            island(start) = islands;
            double lowest = 0.0;
            double highest = 0.0;
            for (std::size_t head = 0; head < queue.size(); ++head) {
                auto const here = queue[head];
                for (auto const e : batteries_at[here]) {
                    auto const& edge = edges_[as_index(e)];
                    auto const forward = from_group(as_index(e)) == here;
                    auto const there = forward ? to_group(as_index(e)) : from_group(as_index(e));
                    auto const there_volts = potential(here) + (forward ? edge.volts : -edge.volts);
                    if (island(there) >= 0) {
                        if (forward && std::abs(potential(there) - there_volts) > same_volts)
                            verdict_.clashes.push_back(e);
                        continue;
                    }
                    island(there) = islands;
                    potential(there) = there_volts;
                    lowest = std::min(lowest, there_volts);
                    highest = std::max(highest, there_volts);
                    queue.push_back(there);
                }
            }
            for (auto const group : queue)
                potential(group) -= lowest;
            verdict_.top.push_back(highest - lowest);
            ++islands;
        }
    }

    // By edge: a battery that shares a closed path with a load, a load that shares one with a battery.
    std::vector<char> on_closed_paths() const {
        std::vector<BlockEdge> block_edges;
        std::vector<std::size_t> which;
        block_edges.reserve(edges_.size());
        which.reserve(edges_.size());
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            if (edges_[e].removed) continue;
            if (edges_[e].kind != WiringEdgeKind::battery && edges_[e].kind != WiringEdgeKind::load) continue;
            if (from_group(e) == to_group(e)) continue;
            block_edges.push_back({from_group(e), to_group(e)});
            which.push_back(e);
        }
        std::vector<char> used(edges_.size(), 0);
        for_each_block(verdict_.groups, block_edges, [&](std::vector<int> const& block) {
            bool battery = false;
            bool load = false;
            for (auto const b : block)
                (edges_[which[as_index(b)]].kind == WiringEdgeKind::battery ? battery : load) = true;
            if (battery && load)
                for (auto const b : block)
                    used[which[as_index(b)]] = 1;
        });
        return used;
    }

    LoadVerdict judge_load(int e, bool closed_path) {
        auto const& edge = edges_[as_index(e)];
        auto const plus = verdict_.group_of(edge.from);
        auto const minus = verdict_.group_of(edge.to);
        if (!closed_path || island(plus) != island(minus)) return {e, FeedState::open, 0.0};
        auto const volts = potential(plus) - potential(minus);
        if (volts < -same_volts) return {e, FeedState::reversed, volts};
        if (edge.most > 0.0 && volts >= edge.least - same_volts && volts <= edge.most + same_volts)
            return {e, FeedState::fed, volts};
        // Lead-acid voltages are exact multiples; a lithium battery's nominal voltage is a name, held to 8 %.
        auto const tolerance = std::max(same_volts, graph_.lithium ? 0.08 * edge.volts : 0.0);
        bool const fits = edge.volts > 0.0 ? std::abs(volts - edge.volts) <= tolerance : volts > same_volts;
        return {e, fits ? FeedState::fed : FeedState::wrong_voltage, volts};
    }

    void count_marking_faults() {
        auto const at_top = [&](int group) {
            auto const top = verdict_.top[as_index(island(group))];
            return top > same_volts && potential(group) > top - same_volts;
        };
        auto const at_bottom = [&](int group) {
            return verdict_.top[as_index(island(group))] > same_volts && potential(group) < same_volts;
        };
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            auto const& edge = edges_[e];
            if (edge.removed) continue;
            auto const here = from_group(e);
            if (edge.kind == WiringEdgeKind::conductor) {
                if (edge.side == ConductorSide::positive && at_bottom(here)) ++verdict_.marking_faults;
                if (edge.side == ConductorSide::negative && at_top(here)) ++verdict_.marking_faults;
            } else if (edge.kind == WiringEdgeKind::contact) {
                auto const kind = graph_.parts[as_index(edge.part)].kind;
                if (kind == PartKind::breaker || kind == PartKind::fuse) {
                    if (at_bottom(here)) ++verdict_.marking_faults;
                } else if (kind == PartKind::connector && e + 1 < edges_.size() && edges_[e + 1].part == edge.part) {
                    auto const minus = from_group(e + 1); // the positive pole's edge comes first
                    if (island(here) == island(minus) && potential(here) < potential(minus) - same_volts)
                        ++verdict_.marking_faults;
                }
            }
        }
    }

    WiringGraph const& graph_;
    std::vector<WiringEdge> const& edges_;
    WiringVerdict verdict_;
};

} // namespace internal

BANKWRIGHT_INLINE WiringVerdict judge(WiringGraph const& graph, std::vector<WiringEdge> const& edges,
                                      std::size_t most_wrongs) {
    return internal::WiringJudge(graph, edges).judge(most_wrongs);
}

BANKWRIGHT_INLINE bool WiringVerdict::right() const {
    return shorted.empty() && clashes.empty() && unused.empty() &&
           std::all_of(loads.begin(), loads.end(), [](auto const& load) { return load.state == FeedState::fed; });
}

} // namespace bankwright
