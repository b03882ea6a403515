#pragma once

#include "bankwright/rules/families/protection.hpp"
#include "bankwright/rules/families/protection_devices.hpp"
#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/wiring/unprotected_path.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {

namespace internal {

// The conductors of a path, in its order, from the battery.
inline std::vector<std::string> conductors_of(WiringGraph const& graph, std::vector<int> const& edges) {
    std::vector<std::string> ids;
    for (auto const e : edges) {
        auto const& edge = graph.edges[static_cast<std::size_t>(e)];
        if (edge.kind == WiringEdgeKind::conductor) ids.push_back(graph.id(edge));
    }
    return ids;
}

// ABYC E-11 excepts the conductors that crank an engine; and a maker may have put a fuse into a charger's leads.
inline bool needs_no_device(Bank const& bank, WiringGraph const& graph, WiringEdge const& edge) {
    auto const& part = graph.parts[static_cast<std::size_t>(edge.part)];
    if (part.kind == PartKind::load) return is_starter(bank.loads[part.index]);
    return part.kind == PartKind::charger && bank.chargers[part.index].fused.value_or(false);
}

// Loads that are fed through the same conductor without a device share one finding: one device mends them all.
inline void check_presence(Seen const& seen, Findings& findings) {
    constexpr auto missing = rule_named(protection_rules, "protection/missing");
    constexpr auto negative_side = rule_named(protection_rules, "protection/negative-side");
    auto const& graph = seen.graph();
    struct Group {
        std::vector<std::string> conductors;
        std::vector<std::string> loads;
        bool only_negative = true;
        bool charges = true; // nothing but chargers
    };
    std::map<std::string, Group> groups;
    for (auto const& path : unprotected_paths(graph)) {
        auto const& draws = graph.edges[static_cast<std::size_t>(path.load_edge)];
        bool const charges = draws.kind == WiringEdgeKind::charger;
        if (needs_no_device(seen.bank(), graph, draws)) continue;
        auto conductors = conductors_of(graph, path.edges);
        auto const& verdict = seen.verdict().loads;
        auto const fed = std::any_of(verdict.begin(), verdict.end(), [&](auto const& load) {
            return load.edge == path.load_edge && load.state != FeedState::open;
        });
        bool const back_fed = charges && seen.verdict().island_of(draws.from) == seen.verdict().island_of(draws.to) &&
                              seen.verdict().potential_of(draws.from) > seen.verdict().potential_of(draws.to) &&
                              seen.verdict().shorted.empty() && seen.verdict().clashes.empty();
        if (!(fed || back_fed) || conductors.empty()) continue; // a wrong wiring is said elsewhere
        auto& group = groups[conductors.front()];
        group.loads.push_back(graph.id(graph.edges[static_cast<std::size_t>(path.load_edge)]));
        group.charges = group.charges && charges;
        group.only_negative = group.only_negative && path.only_negative;
        for (auto& id : conductors)
            if (std::find(group.conductors.begin(), group.conductors.end(), id) == group.conductors.end())
                group.conductors.push_back(std::move(id));
    }
    for (auto& [first, group] : groups) {
        auto const& rule = group.only_negative ? negative_side : missing;
        auto finding = finding_of(
            rule,
            fmt::format("{} can be fed{} through {} with no breaker or fuse in the positive lead{}",
                        quoted_list(group.loads), group.charges ? " back from the battery" : "",
                        quoted_list(group.conductors), group.only_negative ? ", only in the negative one" : ""),
            std::string(rule.fix));
        finding.parts = std::move(group.conductors);
        finding.parts.insert(finding.parts.end(), group.loads.begin(), group.loads.end());
        findings.push_back(std::move(finding));
    }
}

} // namespace internal

BANKWRIGHT_INLINE void check_protection(Seen const& seen, Findings& findings) {
    internal::check_presence(seen, findings);
    internal::DeviceInspector(seen, findings).inspect();
}

} // namespace bankwright
