// Bodies of hookup_order.hpp: the phases, and within each the search.
#pragma once

#include "bankwright/analyses/hookup/hookup_order.hpp"
#include "bankwright/analyses/hookup/last_devices.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/union_find.hpp"
#include "bankwright/wiring/places.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <queue>
#include <tuple>
#include <unordered_map>
#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE std::optional<double> closing_gap(Connection const& connection, Potentials const& potentials) {
    auto const& first = connection.paths.front();
    if (connection.paths.size() == 2) {
        auto const& second = connection.paths.back();
        auto const here = potentials.between(first.from, second.from);
        auto const there = potentials.between(first.to, second.to);
        if (here && there) return std::abs(*here - *there);
    }
    for (auto const& path : connection.paths)
        if (auto const gap = potentials.between(path.from, path.to)) return std::abs(*gap);
    return std::nullopt;
}

namespace internal {

class HookupSearch {
public:
    HookupSearch(Bank const& bank, PartialBank const& partial)
        : bank_(bank), partial_(partial), places_(places_of(bank)), made_(partial.connections().size(), 0) {
        assign_phases();
    }

    HookupOrder run() {
        for (int phase = 0; phase <= static_cast<int>(HookupPhase::last_device); ++phase)
            make(static_cast<HookupPhase>(phase));
        return std::move(order_);
    }

private:
    // Largest gap so far; then how many are still to be made, so that of equals the search follows the furthest.
    struct Open {
        double largest;
        int missing;
        std::uint64_t set;
        bool operator>(Open const& other) const {
            return std::tie(largest, missing, set) > std::tie(other.largest, other.missing, other.set);
        }
    };
    struct Reached {
        double largest;
        int last; // connection that led here
        bool done;
    };

    void assign_phases() {
        auto const graph = wiring_graph(bank_);
        auto const verdict = judge(graph, graph.edges);
        auto const last = last_devices(bank_, partial_);
        for (std::size_t c = 0; c < partial_.connections().size(); ++c) {
            auto const& connection = partial_.connections()[c];
            if (connection.kind == PartKind::fuse && sits_on_a_post(connection)) {
                order_.phase.push_back(HookupPhase::live_lead);
                continue;
            }
            if (connection.kind != PartKind::jumper && connection.kind != PartKind::cable) {
                order_.phase.push_back(connection.kind == PartKind::fuse        ? HookupPhase::fuse
                                       : connection.kind == PartKind::connector ? HookupPhase::plug
                                       : last[c]                                ? HookupPhase::last_device
                                                                                : HookupPhase::device);
                continue;
            }
            auto const from = connection.paths.front().from;
            auto const to = connection.paths.front().to;
            if (partial_.is_post(from) && partial_.is_post(to)) {
                bool const jumper = is_plus(from) != is_plus(to);
                order_.phase.push_back(jumper ? HookupPhase::string_jumper : HookupPhase::link);
            } else if (partial_.is_post(from) || partial_.is_post(to)) {
                auto const& post = partial_.terminals()[as_index(partial_.is_post(from) ? from : to)];
                bool const lowest = verdict.potential_of(graph.terminal_named.at(post)) < same_volts;
                order_.phase.push_back(lowest ? HookupPhase::negative_lead : HookupPhase::live_lead);
            } else {
                order_.phase.push_back(HookupPhase::dead_lead);
            }
        }
    }

    bool sits_on_a_post(Connection const& fuse) const {
        auto const& post = bank_.fuses[fuse.index].on;
        return post && partial_.is_post(partial_.node(*post));
    }

    bool is_plus(int post) const {
        for (std::size_t b = 0; b < partial_.batteries(); ++b)
            if (partial_.plus(b) == post) return true;
        return false;
    }

    void make(HookupPhase phase) {
        std::vector<std::size_t> mine;
        for (std::size_t c = 0; c < order_.phase.size(); ++c)
            if (order_.phase[c] == phase) mine.push_back(c);
        if (phase == HookupPhase::dead_lead) // place by place; those from one place to another at the end
            std::stable_sort(mine.begin(), mine.end(), [&](auto a, auto b) { return place(a) < place(b); });
        // Breakers are closed after everything else that switches.
        std::stable_partition(mine.begin(), mine.end(),
                              [&](std::size_t c) { return partial_.connections()[c].kind != PartKind::breaker; });
        auto loops = without_bridges(mine);
        auto const best = loops.size() <= 60 ? search(loops) : std::vector<std::size_t>{};
        if (best.size() < loops.size()) order_.proven = false;
        for (auto const c : best.size() < loops.size() ? greedy(loops) : best)
            take(c);
    }

    int place(std::size_t c) const {
        auto const& path = partial_.connections()[c].paths.front();
        auto const of = [&](int node) { return places_.at.at(partial_.terminals()[as_index(node)]); };
        return of(path.from) == of(path.to) ? of(path.from) : std::numeric_limits<int>::max();
    }

    void take(std::size_t c) {
        if (auto const gap = closing_gap(partial_.connections()[c], partial_.read(made_)))
            order_.largest_gap = std::max(order_.largest_gap, *gap);
        made_[c] = 1;
        order_.sequence.push_back(c);
    }

    // A connection that lies on no loop when all of its phase are made carries nothing, and what it joins it cannot
    // disturb: it may come first. Makes these, and returns the others.
    std::vector<std::size_t> without_bridges(std::vector<std::size_t> const& mine) {
        auto all = made_;
        for (auto const c : mine)
            all[c] = 1;
        std::vector<std::size_t> loops;
        for (auto const c : mine) {
            all[c] = 0;
            auto const island = partial_.islands(all);
            all[c] = 1;
            auto const& paths = partial_.connections()[c].paths;
            auto const at = [&](int node) { return island[as_index(node)]; };
            bool const on_loop = std::any_of(paths.begin(), paths.end(),
                                             [&](auto const& path) { return at(path.from) == at(path.to); }) ||
                                 (paths.size() == 2 && at(paths[0].from) == at(paths[1].from) &&
                                  at(paths[0].to) == at(paths[1].to) && partial_has_battery(at, paths[0]));
            if (on_loop)
                loops.push_back(c);
            else
                take(c);
        }
        return loops;
    }

    // A plug between two sides that both hold a battery closes a loop with its second pole.
    template <class IslandOf>
    bool partial_has_battery(IslandOf const& at, Connection::Path const& path) const {
        bool here = false, there = false;
        for (std::size_t b = 0; b < partial_.batteries(); ++b) {
            here = here || at(partial_.plus(b)) == at(path.from);
            there = there || at(partial_.plus(b)) == at(path.to);
        }
        return here && there;
    }

    Made with(std::vector<std::size_t> const& loops, std::uint64_t set) const {
        auto made = made_;
        for (std::size_t i = 0; i < loops.size(); ++i)
            if ((set >> i) & 1u) made[loops[i]] = 1;
        return made;
    }

    // Best first over the sets of made connections; the first time that all are made, no other way has a smaller
    // largest gap. Empty if that would take too long.
    std::vector<std::size_t> search(std::vector<std::size_t> const& loops) {
        constexpr std::size_t most_states = 1024;
        constexpr double same = 1e-9; // [V] below what rounding leaves of equal batteries
        std::unordered_map<std::uint64_t, Reached> reached{{0, {0.0, -1, false}}};
        std::priority_queue<Open, std::vector<Open>, std::greater<>> open;
        open.push({0.0, static_cast<int>(loops.size()), 0});
        for (std::size_t states = 0; !open.empty() && states < most_states;) {
            auto const here = open.top();
            open.pop();
            if (std::exchange(reached[here.set].done, true)) continue;
            if (here.missing == 0) return way_to(here.set, loops, reached);
            ++states;
            ++order_.states;
            auto const potentials = partial_.read(with(loops, here.set));
            for (std::size_t i = 0; i < loops.size(); ++i) {
                if ((here.set >> i) & 1u) continue;
                auto const gap = closing_gap(partial_.connections()[loops[i]], potentials).value_or(0.0);
                auto const largest = std::max(here.largest, gap < same ? 0.0 : gap);
                auto const set = here.set | (std::uint64_t{1} << i);
                auto const [it, is_new] = reached.emplace(set, Reached{largest, static_cast<int>(i), false});
                if (!is_new && (it->second.done || it->second.largest <= largest)) continue;
                it->second = {largest, static_cast<int>(i), false};
                open.push({largest, here.missing - 1, set});
            }
        }
        return {};
    }

    static std::vector<std::size_t> way_to(std::uint64_t set, std::vector<std::size_t> const& loops,
                                           std::unordered_map<std::uint64_t, Reached> const& reached) {
        std::vector<std::size_t> way;
        while (set != 0) {
            auto const last = as_index(reached.at(set).last);
            way.push_back(loops[last]);
            set &= ~(std::uint64_t{1} << last);
        }
        std::reverse(way.begin(), way.end());
        return way;
    }

    std::vector<std::size_t> greedy(std::vector<std::size_t> left) const {
        auto made = made_;
        std::vector<std::size_t> way;
        while (!left.empty()) {
            auto const potentials = partial_.read(made);
            auto const gap = [&](std::size_t c) {
                return closing_gap(partial_.connections()[c], potentials).value_or(0.0);
            };
            auto const least =
                std::min_element(left.begin(), left.end(), [&](auto a, auto b) { return gap(a) < gap(b); });
            made[*least] = 1;
            way.push_back(*least);
            left.erase(least);
        }
        return way;
    }

    Bank const& bank_;
    PartialBank const& partial_;
    Places places_;
    Made made_;
    HookupOrder order_;
};

} // namespace internal

BANKWRIGHT_INLINE HookupOrder hookup_order(Bank const& bank, PartialBank const& partial) {
    return internal::HookupSearch(bank, partial).run();
}

} // namespace bankwright
