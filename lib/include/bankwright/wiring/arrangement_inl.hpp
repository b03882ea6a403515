#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/wiring/arrangement.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace bankwright {

BANKWRIGHT_INLINE std::optional<std::string> Arrangement::notation() const {
    if (form != ArrangementForm::strings && form != ArrangementForm::cross_tied) return std::nullopt;
    return std::to_string(series) + "S" + std::to_string(parallel) + "P";
}

namespace internal {

class ArrangementFinder {
public:
    ArrangementFinder(WiringGraph const& graph, std::vector<WiringEdge> const& edges, WiringVerdict const& verdict)
        : graph_(graph), edges_(edges), verdict_(verdict) {}

    Arrangement find() {
        Arrangement found;
        auto const island = choose_island();
        if (island < 0 || !choose_ends(island, found)) return found;
        at_.assign(as_index(verdict_.groups), {});
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            if (!is_battery(e) || island_of(e) != island) continue;
            if (from(e) == to(e)) return found; // shorted: no arrangement
            ++batteries_;
            at_[as_index(from(e))].push_back(static_cast<int>(e));
            at_[as_index(to(e))].push_back(static_cast<int>(e));
        }
        if (walk_strings(found)) return found;
        if (verdict_.clashes.empty()) rank_levels(island, found);
        return found;
    }

private:
    bool is_battery(std::size_t e) const { return !edges_[e].removed && edges_[e].kind == WiringEdgeKind::battery; }
    int from(std::size_t e) const { return verdict_.group_of(edges_[e].from); }
    int to(std::size_t e) const { return verdict_.group_of(edges_[e].to); }
    int island_of(std::size_t e) const { return verdict_.island_of(edges_[e].from); }

    int choose_island() const {
        std::map<int, int> batteries;
        for (std::size_t e = 0; e < edges_.size(); ++e)
            if (is_battery(e)) ++batteries[island_of(e)];
        int best = -1;
        int score = -1;
        for (auto const& [island, count] : batteries) {
            int s = count;
            for (auto const& load : verdict_.loads) {
                auto const& edge = edges_[as_index(load.edge)];
                bool const motor = graph_.parts[as_index(edge.part)].kind == PartKind::motor;
                if (load.state != FeedState::open && verdict_.island_of(edge.from) == island && motor)
                    s = count + static_cast<int>(edges_.size());
            }
            if (s > score) {
                score = s;
                best = island;
            }
        }
        return best;
    }

    // The bank's two ends: where the load of the highest voltage is joined, or else the lowest and the highest point.
    bool choose_ends(int island, Arrangement& found) const {
        double widest = -1.0;
        for (auto const& load : verdict_.loads) {
            auto const& edge = edges_[as_index(load.edge)];
            if (load.state == FeedState::open || verdict_.island_of(edge.from) != island) continue;
            if (std::abs(load.volts) <= widest) continue;
            widest = std::abs(load.volts);
            auto const reversed = load.volts < 0.0;
            found.positive_group = verdict_.group_of(reversed ? edge.to : edge.from);
            found.negative_group = verdict_.group_of(reversed ? edge.from : edge.to);
        }
        if (widest < 0.0) {
            for (int g = 0; g < verdict_.groups; ++g) {
                auto const i = as_index(g);
                if (verdict_.island[i] != island) continue;
                auto const higher = [&](int other) {
                    return verdict_.potential[i] > verdict_.potential[as_index(other)];
                };
                if (found.positive_group < 0 || higher(found.positive_group)) found.positive_group = g;
                if (found.negative_group < 0 || !higher(found.negative_group)) found.negative_group = g;
            }
        }
        return found.positive_group >= 0 && found.positive_group != found.negative_group;
    }

    bool walk_strings(Arrangement& found) const {
        std::size_t walked = 0;
        std::vector<std::vector<int>> strings;
        for (auto const first : at_[as_index(found.negative_group)]) {
            std::vector<int> string;
            auto here = found.negative_group;
            for (auto e = first;;) {
                string.push_back(e);
                here = from(as_index(e)) == here ? to(as_index(e)) : from(as_index(e));
                if (here == found.positive_group) break;
                auto const& at = at_[as_index(here)];
                if (at.size() != 2 || here == found.negative_group) return false;
                e = at[0] == e ? at[1] : at[0];
            }
            walked += string.size();
            strings.push_back(std::move(string));
        }
        if (strings.empty() || walked != batteries_) return false;
        auto const equal = std::all_of(strings.begin(), strings.end(),
                                       [&](auto const& s) { return s.size() == strings.front().size(); });
        found.form = equal ? ArrangementForm::strings : ArrangementForm::unequal;
        found.series = static_cast<int>(strings.front().size());
        found.parallel = static_cast<int>(strings.size());
        found.strings = std::move(strings);
        return true;
    }

    // Cross-tied: every battery climbs exactly one level of potential, and each level has as many; the lowest and the
    // highest are one point each.
    void rank_levels(int island, Arrangement& found) const {
        std::vector<double> levels;
        for (int g = 0; g < verdict_.groups; ++g)
            if (verdict_.island[as_index(g)] == island) levels.push_back(verdict_.potential[as_index(g)]);
        std::sort(levels.begin(), levels.end());
        auto const one_point = [](double end, double next) { return std::abs(next - end) > same_volts; };
        if (levels.size() < 2 || !one_point(levels[0], levels[1])) return;
        if (!one_point(levels.back(), levels[levels.size() - 2])) return;
        levels.erase(std::unique(levels.begin(), levels.end(), [](double a, double b) { return b - a < same_volts; }),
                     levels.end());
        auto const level = [&](int group) {
            auto const volts = verdict_.potential[as_index(group)];
            return static_cast<int>(std::upper_bound(levels.begin(), levels.end(), volts + same_volts / 2.0) -
                                    levels.begin());
        };
        std::vector<int> count(levels.size(), 0);
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            if (!is_battery(e) || island_of(e) != island) continue;
            if (level(to(e)) != level(from(e)) + 1) return;
            ++count[as_index(level(from(e)) - 1)];
        }
        count.pop_back(); // nothing climbs from the top
        if (count.empty() || std::any_of(count.begin(), count.end(), [&](int c) { return c != count.front(); })) return;
        if (level(found.negative_group) != 1 || level(found.positive_group) != static_cast<int>(levels.size())) return;
        found.form = ArrangementForm::cross_tied;
        found.series = static_cast<int>(count.size());
        found.parallel = count.front();
    }

    WiringGraph const& graph_;
    std::vector<WiringEdge> const& edges_;
    WiringVerdict const& verdict_;
    std::vector<std::vector<int>> at_; // battery edges by group
    std::size_t batteries_ = 0;
};

} // namespace internal

BANKWRIGHT_INLINE Arrangement arrangement(WiringGraph const& graph, std::vector<WiringEdge> const& edges,
                                          WiringVerdict const& verdict) {
    return internal::ArrangementFinder(graph, edges, verdict).find();
}

} // namespace bankwright
