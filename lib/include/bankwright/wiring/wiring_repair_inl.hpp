#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/wiring/wiring_repair.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>
#include <utility>

namespace bankwright {

namespace internal {

inline void carry_out(Repair const& repair, std::vector<WiringEdge>& edges) {
    auto const chosen = as_index(repair.edge);
    switch (repair.kind) {
    case RepairKind::turn_battery:
        std::swap(edges[chosen].from, edges[chosen].to);
        break;
    case RepairKind::remove:
        edges[chosen].removed = true;
        break;
    case RepairKind::move_end:
        (repair.moves_from ? edges[chosen].from : edges[chosen].to) = repair.onto;
        break;
    case RepairKind::swap_leads:
        for (auto& edge : edges) {
            if (edge.kind != WiringEdgeKind::conductor) continue;
            for (auto* end : {&edge.from, &edge.to}) {
                if (*end == repair.at)
                    *end = repair.onto;
                else if (*end == repair.onto)
                    *end = repair.at;
            }
        }
        break;
    case RepairKind::add: {
        WiringEdge edge;
        edge.from = repair.at;
        edge.to = repair.onto;
        edges.push_back(edge);
        break;
    }
    }
}

} // namespace internal

BANKWRIGHT_INLINE std::vector<WiringEdge> repaired(std::vector<WiringEdge> edges, Repair const& repair) {
    internal::carry_out(repair, edges);
    return edges;
}

namespace internal {

// Does this battery work against the others of its string? Then two posts of one sign meet where nothing is fed: a bank
// like that is not right, whatever its loads then see.
inline bool opposes_its_string(std::vector<WiringEdge> const& edges, WiringVerdict const& verdict, int battery) {
    auto const& turned = edges[as_index(battery)];
    for (auto const end : {turned.from, turned.to}) {
        auto const group = verdict.group_of(end);
        int plus = 0, minus = 0;
        bool feeds = false;
        for (auto const& edge : edges) {
            if (edge.removed) continue;
            bool const here = verdict.group_of(edge.from) == group, there = verdict.group_of(edge.to) == group;
            if (edge.kind == WiringEdgeKind::battery) {
                minus += here;
                plus += there;
            } else if (edge.kind == WiringEdgeKind::load || edge.kind == WiringEdgeKind::charger) {
                feeds = feeds || here || there;
            }
        }
        if (!feeds && ((plus > 1 && minus == 0) || (minus > 1 && plus == 0))) return true;
    }
    return false;
}

class RepairSearch {
public:
    RepairSearch(WiringGraph const& graph, std::vector<WiringEdge> const& edges)
        : graph_(graph), edges_(edges), verdict_(judge(graph, edges)) {
        landed_.assign(graph.terminals.size(), 0);
        for (auto const& edge : edges_) {
            if (edge.removed || edge.kind != WiringEdgeKind::conductor) continue;
            ++landed_[as_index(edge.from)];
            ++landed_[as_index(edge.to)];
        }
        choose_landings();
    }

    // To try thousands of parts in thousands of places would take too long.
    bool is_too_long() const {
        auto const conductors =
            std::accumulate(landed_.begin(), landed_.end(), 0.0) / 2.0; // each is tried at both ends
        double const groups = verdict_.groups;
        auto const tried = 2.0 * conductors * groups + (something_is_apart() ? groups * groups / 2.0 : 0.0);
        return tried * static_cast<double>(edges_.size() + landed_.size()) > most_work;
    }

    // The best repairs of one change, all that do equally well; empty if none mends anything.
    std::vector<Repair> search() {
        turn_and_swap();
        move_and_remove();
        add();
        auto const rank = [](Repair const& r) {
            auto const order =
                r.kind == RepairKind::add ? 2 : r.kind == RepairKind::move_end || r.kind == RepairKind::remove;
            return std::tuple(r.wrongs, r.irregular, r.marking_faults, r.bare, order);
        };
        std::stable_sort(found_.begin(), found_.end(), [&](auto const& a, auto const& b) { return rank(a) < rank(b); });
        while (!found_.empty() && rank(found_.back()) != rank(found_.front()))
            found_.pop_back();
        return std::move(found_);
    }

private:
    // One terminal a group, where a conductor would most naturally be landed: the one with least on it.
    void choose_landings() {
        landing_.assign(as_index(verdict_.groups), -1);
        for (std::size_t t = 0; t < graph_.terminals.size(); ++t) {
            auto& best = landing_[as_index(verdict_.group[t])];
            if (best < 0 || landed_[t] < landed_[as_index(best)]) best = static_cast<int>(t);
        }
    }

    void turn_and_swap() {
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            auto const& edge = edges_[e];
            if (edge.kind == WiringEdgeKind::battery) {
                Repair r;
                r.kind = RepairKind::turn_battery;
                r.part = edge.part;
                r.edge = static_cast<int>(e);
                consider(r);
            } else if (edge.kind == WiringEdgeKind::load) {
                swap(edge.part, edge.from, edge.to);
            } else if (edge.kind == WiringEdgeKind::contact && e + 1 < edges_.size() &&
                       graph_.parts[as_index(edge.part)].kind == PartKind::connector &&
                       edges_[e + 1].part == edge.part) {
                swap(edge.part, edge.from, edges_[e + 1].from); // receptacle
                swap(edge.part, edge.to, edges_[e + 1].to);     // plug
            }
        }
    }

    void swap(int part, int plus, int minus) {
        Repair r;
        r.kind = RepairKind::swap_leads;
        r.part = part;
        r.at = plus;
        r.onto = minus;
        consider(r);
    }

    void move_and_remove() {
        for (std::size_t e = 0; e < graph_.edges.size(); ++e) { // not what an earlier step has added
            auto const& edge = edges_[e];
            if (edge.removed || edge.kind != WiringEdgeKind::conductor) continue;
            Repair r;
            r.part = edge.part;
            r.edge = static_cast<int>(e);
            r.kind = RepairKind::remove;
            consider(r);
            r.kind = RepairKind::move_end;
            for (auto const from : {true, false}) {
                r.moves_from = from;
                r.at = from ? edge.from : edge.to;
                for (int g = 0; g < verdict_.groups; ++g) {
                    if (g == verdict_.group_of(r.at)) continue;
                    r.onto = landing_[as_index(g)];
                    consider(r);
                }
            }
        }
    }

    void add() {
        if (!something_is_apart()) return;
        for (int g = 0; g < verdict_.groups; ++g) {
            for (int h = g + 1; h < verdict_.groups; ++h) {
                Repair r;
                r.kind = RepairKind::add;
                r.at = landing_[as_index(g)];
                r.onto = landing_[as_index(h)];
                consider(r);
            }
        }
    }

    bool something_is_apart() const {
        return !verdict_.unused.empty() || std::any_of(verdict_.loads.begin(), verdict_.loads.end(),
                                                       [](auto const& l) { return l.state == FeedState::open; });
    }

    static int wrongs(WiringVerdict const& verdict) {
        auto count = verdict.shorted.size() + verdict.clashes.size() + verdict.unused.size();
        for (auto const& load : verdict.loads)
            count += load.state != FeedState::fed;
        return static_cast<int>(count);
    }

    void consider(Repair r) {
        trial_ = edges_;
        carry_out(r, trial_);
        auto const most = std::min(best_wrongs_, wrongs(verdict_) - 1);
        auto const verdict = judge(graph_, trial_, as_index(most));
        r.wrongs = wrongs(verdict);
        if (r.wrongs > most) return;
        if (r.wrongs == 0 && r.kind == RepairKind::turn_battery && opposes_its_string(trial_, verdict, r.edge)) return;
        best_wrongs_ = r.wrongs;
        auto const form = arrangement(graph_, trial_, verdict).form;
        r.irregular = form == ArrangementForm::strings ? 0 : form == ArrangementForm::cross_tied ? 1 : 2;
        r.marking_faults = verdict.marking_faults;
        r.bare = bare(trial_);
        found_.push_back(r);
    }

    // Terminals of batteries and devices with nothing on them, and conductors that end where nothing else is.
    int bare(std::vector<WiringEdge> const& edges) const {
        std::vector<int> landed(graph_.terminals.size(), 0);
        for (auto const& edge : edges) {
            if (edge.removed || edge.kind != WiringEdgeKind::conductor) continue;
            ++landed[as_index(edge.from)];
            ++landed[as_index(edge.to)];
        }
        int count = 0;
        for (std::size_t t = 0; t < landed.size(); ++t) {
            bool const busbar = graph_.owner_of(static_cast<int>(t)).kind == PartKind::busbar;
            count += busbar ? landed[t] == 1 : landed[t] == 0;
        }
        return count;
    }

    static constexpr double most_work = 4e7; // edges and terminals looked at: a quarter of a second

    WiringGraph const& graph_;
    std::vector<WiringEdge> edges_;
    std::vector<WiringEdge> trial_; // kept for its memory
    WiringVerdict verdict_;
    int best_wrongs_ = std::numeric_limits<int>::max();
    std::vector<int> landed_;  // by terminal: conductor ends on it
    std::vector<int> landing_; // by group
    std::vector<Repair> found_;
};

// Two batteries turned around explain together what neither does alone: their effects on a load may cancel.
inline std::vector<std::vector<Repair>> turn_two(WiringGraph const& graph, std::vector<WiringEdge> const& edges) {
    auto const turn = [&](std::size_t e) {
        Repair r;
        r.kind = RepairKind::turn_battery;
        r.part = edges[e].part;
        r.edge = static_cast<int>(e);
        return r;
    };
    for (std::size_t a = 0; a < edges.size(); ++a) {
        if (edges[a].kind != WiringEdgeKind::battery) continue;
        auto const once = repaired(edges, turn(a));
        for (std::size_t b = a + 1; b < edges.size(); ++b) {
            if (edges[b].kind != WiringEdgeKind::battery) continue;
            auto const twice = repaired(once, turn(b));
            auto const verdict = judge(graph, twice);
            if (verdict.right() && !opposes_its_string(twice, verdict, static_cast<int>(a)) &&
                !opposes_its_string(twice, verdict, static_cast<int>(b)))
                return {{turn(a)}, {turn(b)}};
        }
    }
    return {};
}

} // namespace internal

BANKWRIGHT_INLINE RepairPlan plan_repair(WiringGraph const& graph, std::vector<WiringEdge> const& edges) {
    constexpr std::size_t most_steps = 4; // further on, a list of changes no longer explains anything
    RepairPlan plan;
    auto now = edges;
    plan.complete = judge(graph, now).right();
    while (!plan.complete && plan.steps.size() < most_steps) {
        internal::RepairSearch search(graph, now);
        if (search.is_too_long()) break;
        auto best = search.search();
        if (plan.steps.empty() && (best.empty() || best.front().wrongs > 0)) {
            if (auto pair = internal::turn_two(graph, edges); !pair.empty()) return {std::move(pair), true};
        }
        if (best.empty()) break;
        now = repaired(std::move(now), best.front());
        plan.complete = best.front().wrongs == 0;
        plan.steps.push_back(std::move(best));
    }
    return plan;
}

} // namespace bankwright
