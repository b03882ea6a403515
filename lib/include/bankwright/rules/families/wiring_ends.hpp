// Of a wiring in which every load is fed and every battery works: which ends are still joined to too little?
#pragma once

#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/rules/rule.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal {

// The conductors and devices one behind the other from a terminal to a battery's post, or to where the way forks.
inline std::vector<int> chain_from(WiringGraph const& graph, std::vector<WiringEdge> const& edges, int terminal) {
    std::vector<int> chain;
    for (;;) {
        int next = -1;
        int ways = 0;
        for (std::size_t e = 0; e < edges.size(); ++e) {
            auto const& edge = edges[e];
            if (edge.kind != WiringEdgeKind::conductor && edge.kind != WiringEdgeKind::contact) continue;
            if (edge.from != terminal && edge.to != terminal) continue;
            if (std::find(chain.begin(), chain.end(), static_cast<int>(e)) != chain.end()) continue;
            next = static_cast<int>(e);
            ++ways;
        }
        if (ways != 1 || graph.owner_of(terminal).kind == PartKind::battery) return chain;
        chain.push_back(next);
        auto const& edge = edges[static_cast<std::size_t>(next)];
        terminal = edge.from == terminal ? edge.to : edge.from;
    }
}

// A charger whose leads are landed, and not across any battery. Where one is not landed that is a loose end.
inline void say_idle_chargers(RuleInfo const& rule, WiringGraph const& graph, std::vector<WiringEdge> const& edges,
                              WiringVerdict const& verdict, Findings& findings) {
    for (auto const& charger : edges) {
        if (charger.kind != WiringEdgeKind::charger || charger.removed) continue;
        bool const on_one_point = verdict.group_of(charger.from) == verdict.group_of(charger.to);
        if (verdict.island_of(charger.from) == verdict.island_of(charger.to) && !on_one_point) continue;
        auto const is_bare = [&](int terminal) {
            return std::none_of(edges.begin(), edges.end(), [&](WiringEdge const& e) {
                return e.kind == WiringEdgeKind::conductor && (e.from == terminal || e.to == terminal);
            });
        };
        if (is_bare(charger.from) || is_bare(charger.to)) continue;
        std::vector<std::string> parts{graph.id(charger)};
        for (auto const terminal : {charger.from, charger.to})
            for (auto const e : chain_from(graph, edges, terminal))
                parts.push_back(graph.id(edges[static_cast<std::size_t>(e)]));
        keep_first_of_each(parts);
        auto finding = finding_of(rule,
                                  fmt::format("`{}` and `{}` have no battery between them: the charger charges nothing",
                                              graph.name(charger.from), graph.name(charger.to)),
                                  "land its two leads on the two ends of what it charges");
        finding.level = Level::warning;
        finding.parts = std::move(parts);
        findings.push_back(std::move(finding));
    }
}

// Batteries that share one pole, and the other ends of which, at one potential, are apart: a load there draws from some
// of them alone. House and starting batteries share their negative on purpose; nobody shares the positive so.
// Where each says its own role that is meant.
inline void say_missing_links(RuleInfo const& rule, WiringGraph const& graph, std::vector<WiringEdge> const& edges,
                              WiringVerdict const& verdict, std::vector<Battery> const& all, Findings& findings) {
    auto const role = [&](std::string const& id) {
        auto const at = std::find_if(all.begin(), all.end(), [&](auto const& one) { return one.id == id; });
        return at == all.end() ? std::optional<Role>() : at->role;
    };
    std::map<int, std::vector<std::string>>
        with[2]; // by group: batteries with their negative, their positive post there
    for (auto const& e : edges) {
        if (e.kind != WiringEdgeKind::battery) continue;
        with[0][verdict.group_of(e.from)].push_back(graph.id(e));
        with[1][verdict.group_of(e.to)].push_back(graph.id(e));
    }
    for (int const pole : {0, 1}) {
        std::map<std::pair<int, long>, std::vector<std::vector<std::string>>> ends; // by island and potential
        for (auto const& [group, batteries] : with[pole]) {
            auto const i = static_cast<std::size_t>(group);
            if (with[1 - pole].count(group)) continue; // in the middle of a string
            ends[{verdict.island[i], std::lround(verdict.potential[i] / same_volts)}].push_back(batteries);
        }
        for (auto& [where, apart] : ends) {
            if (apart.size() < 2) continue;
            std::set<Role> roles;
            for (auto const& batteries : apart)
                if (auto const one = role(batteries.front())) roles.insert(*one);
            if (pole == 1 && roles.size() == apart.size()) continue;
            std::stable_sort(apart.begin(), apart.end(),
                             [](auto const& a, auto const& b) { return a.size() < b.size(); });
            std::string text;
            std::vector<std::string> parts;
            for (auto const& batteries : apart) {
                text += fmt::format("{}{}", text.empty() ? "" : " and ", quoted_list(batteries));
                parts.insert(parts.end(), batteries.begin(), batteries.end());
            }
            auto finding = finding_of(rule,
                                      fmt::format("the {} ends of {} are not joined, though their other ends are: they "
                                                  "feed different loads",
                                                  pole == 0 ? "negative" : "positive", text),
                                      std::string(rule.fix));
            if (pole == 1) finding.level = Level::note;
            finding.parts = std::move(parts);
            findings.push_back(std::move(finding));
        }
    }
}

// The two sides of a shunt in the negative: its bank's batteries on the one, and everything else on the other.
inline void say_past_shunts(RuleInfo const& rule, Seen const& seen, Findings& findings) {
    auto const& graph = seen.graph();
    for (auto const& shunt : seen.bank().shunts) {
        auto edges = graph.edges;
        for (auto& e : edges)
            e.removed = e.removed || graph.id(e) == shunt.id;
        auto const apart = judge(graph, edges);
        auto const side_of = [&](int terminal) { return apart.group_of(terminal); };
        int const first = side_of(graph.terminal_named.at(shunt.id + ".1")),
                  second = side_of(graph.terminal_named.at(shunt.id + ".2"));
        std::map<int, std::vector<std::size_t>> batteries; // by side: those that have their negative there
        std::size_t number = 0;
        for (auto const& e : graph.edges)
            if (e.kind == WiringEdgeKind::battery) batteries[side_of(e.from)].push_back(number++);
        int const own = batteries[first].size() >= batteries[second].size() ? first : second;
        int const other = own == first ? second : first;
        if (batteries[own].empty() || first == second) continue; // not in a negative, or joined on both its sides
        auto const& bank_of = seen.bank_when_parted();
        std::vector<std::string> past;
        for (auto const b : batteries[other])
            if (bank_of[b] == bank_of[batteries[own].front()]) past.push_back(seen.bank().batteries[b].id);
        for (auto const& e : graph.edges)
            if ((e.kind == WiringEdgeKind::load || e.kind == WiringEdgeKind::charger) && side_of(e.to) == own)
                past.push_back(graph.id(e));
        keep_first_of_each(past);
        if (past.empty()) continue;
        auto finding = finding_of(rule,
                                  fmt::format("what flows through {} returns past `{}`, whose meter does not count it",
                                              quoted_list(past), shunt.id),
                                  std::string(rule.fix));
        finding.parts = {shunt.id};
        finding.parts.insert(finding.parts.end(), past.begin(), past.end());
        findings.push_back(std::move(finding));
    }
}

} // namespace bankwright::internal
