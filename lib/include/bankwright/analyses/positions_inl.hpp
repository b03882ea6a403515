// Bodies of positions.hpp.
#pragma once

#include "bankwright/graph/blocks.hpp"
#include "bankwright/graph/union_find.hpp"
#include "bankwright/network/to_branches.hpp"
#include "bankwright/analyses/positions.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <cstddef>
#include <set>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace internal::switching {

inline std::string words_of(Bank const& bank) {
    constexpr std::string_view on[] = {"off", "on 1", "on 2", "on both"};
    std::string words;
    auto const add = [&](std::string const& id, std::string_view how) {
        words += fmt::format("{}`{}` {}", words.empty() ? "with " : " and ", id, how);
    };
    for (auto const& selector : bank.selectors)
        add(selector.id, on[static_cast<std::size_t>(selector.position.value_or(SelectorPosition::first))]);
    for (auto const& relay : bank.relays)
        add(relay.id, relay.closed.value_or(false) ? "closed" : "open");
    return words;
}

inline std::size_t count(std::vector<int> banks) { return std::set<int>(banks.begin(), banks.end()).size(); }

// Switches that are open stand as relays that are.
inline Bank with_open_switches_as_relays(Bank bank) {
    auto& switches = bank.switches;
    for (auto const& one : switches)
        if (!one.closed.value_or(true)) bank.relays.push_back({one.id, {}, {}, one.rating, false, one.place});
    switches.erase(
        std::remove_if(switches.begin(), switches.end(), [](auto const& one) { return !one.closed.value_or(true); }),
        switches.end());
    return bank;
}

} // namespace internal::switching

BANKWRIGHT_INLINE std::vector<WiringEdge> standing_edges(Bank const& bank, WiringGraph const& graph) {
    auto edges = graph.edges;
    for (std::size_t e = 0; e < edges.size(); ++e) {
        auto& edge = edges[e];
        auto const& part = graph.parts[as_index(edge.part)];
        if (part.kind == PartKind::relay) {
            edge.removed = !bank.relays[part.index].closed.value_or(false);
        } else if (part.kind == PartKind::selector) {
            auto const at = bank.selectors[part.index].position.value_or(SelectorPosition::first);
            bool const is_first = e + 1 < edges.size() && edges[e + 1].part == edge.part; // its two sides follow
            edge.removed = is_first ? !joins_first(at) : !joins_second(at);
        }
    }
    return edges;
}

BANKWRIGHT_INLINE std::vector<int> bank_of_batteries(WiringGraph const& graph, std::vector<WiringEdge> const& edges) {
    auto const verdict = judge(graph, edges);
    std::vector<std::pair<int, int>> posts; // by battery: groups of - and +
    std::vector<BlockEdge> ends;
    std::vector<int> which;
    for (auto const& edge : edges) {
        if (edge.kind != WiringEdgeKind::battery) continue;
        posts.emplace_back(verdict.group_of(edge.from), verdict.group_of(edge.to));
        if (posts.back().first == posts.back().second) continue;
        ends.push_back({posts.back().first, posts.back().second});
        which.push_back(static_cast<int>(posts.size()) - 1);
    }
    solver::UnionFind banks(static_cast<int>(posts.size()));
    for_each_block(verdict.groups, ends, [&](std::vector<int> const& block) {
        for (auto const e : block)
            banks.unite(which[as_index(block.front())], which[as_index(e)]);
    });
    for (std::size_t a = 0; a < posts.size(); ++a)
        for (std::size_t b = 0; b < posts.size(); ++b)
            if (posts[a].second == posts[b].first) banks.unite(static_cast<int>(a), static_cast<int>(b));
    std::vector<int> bank_of(posts.size());
    for (std::size_t b = 0; b < posts.size(); ++b)
        bank_of[b] = banks.find(static_cast<int>(b));
    return bank_of;
}

BANKWRIGHT_INLINE std::vector<int> separable_banks(Bank const& bank) {
    auto apart = internal::switching::with_open_switches_as_relays(bank);
    for (auto& selector : apart.selectors)
        selector.position = SelectorPosition::off;
    for (auto& relay : apart.relays)
        relay.closed = false;
    auto const graph = wiring_graph(apart);
    return bank_of_batteries(graph, standing_edges(apart, graph));
}

BANKWRIGHT_INLINE std::vector<SwitchPosition> positions_of(Bank const& bank) {
    using namespace internal::switching;
    auto standing = with_open_switches_as_relays(bank);
    if (standing.selectors.empty() && standing.relays.empty()) return {{{}, bank}};
    for (auto& selector : standing.selectors)
        selector.position = selector.position.value_or(SelectorPosition::first);
    auto const charging = charging_voltage(bank, Moment{});
    for (auto& relay : standing.relays)
        relay.closed = relay.closed.value_or(closes_at(relay, charging));
    // A switch that joins no banks is a switch again: whoever looks at a bank takes it as closed.
    auto const apart = count(separable_banks(bank));
    auto const first_switch = bank.relays.size();
    for (std::size_t r = standing.relays.size(); r-- > first_switch;) {
        auto joined = bank;
        for (auto& one : joined.switches)
            if (one.id == standing.relays[r].id) one.closed = true;
        if (count(separable_banks(joined)) < apart) continue;
        auto const id = standing.relays[r].id;
        standing.relays.erase(standing.relays.begin() + static_cast<std::ptrdiff_t>(r));
        for (auto const& one : bank.switches)
            if (one.id == id) standing.switches.push_back(one);
    }
    if (standing.selectors.empty() && standing.relays.empty()) return {{{}, bank}};

    std::vector<SwitchPosition> positions{{words_of(standing), standing}};
    auto const add = [&](Bank const& turned) { positions.push_back({words_of(turned), turned}); };
    for (std::size_t s = 0; s < standing.selectors.size(); ++s)
        for (auto const at : {SelectorPosition::first, SelectorPosition::second, SelectorPosition::both}) {
            if (standing.selectors[s].position == at) continue;
            auto turned = standing;
            turned.selectors[s].position = at;
            add(turned);
        }
    for (std::size_t r = 0; r < standing.relays.size(); ++r) {
        auto turned = standing;
        turned.relays[r].closed = !*standing.relays[r].closed;
        add(turned);
    }
    return positions;
}

} // namespace bankwright
