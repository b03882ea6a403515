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

// Loads that are fed through the same conductor without a device share one finding: one device mends them all.
inline void check_presence(Seen const& seen, Findings& findings) {
    constexpr auto missing = rule_named(protection_rules, "protection/missing");
    constexpr auto negative_side = rule_named(protection_rules, "protection/negative-side");
    auto const& graph = seen.graph();
    struct Group {
        std::vector<std::string> conductors;
        std::vector<std::string> loads;
        bool only_negative = true;
    };
    std::map<std::string, Group> groups;
    for (auto const& path : unprotected_paths(graph)) {
        auto conductors = conductors_of(graph, path.edges);
        auto const& verdict = seen.verdict().loads;
        auto const fed = std::any_of(verdict.begin(), verdict.end(), [&](auto const& load) {
            return load.edge == path.load_edge && load.state != FeedState::open;
        });
        if (!fed || conductors.empty()) continue; // a wrong wiring is said elsewhere
        auto& group = groups[conductors.front()];
        group.loads.push_back(graph.id(graph.edges[static_cast<std::size_t>(path.load_edge)]));
        group.only_negative = group.only_negative && path.only_negative;
        for (auto& id : conductors)
            if (std::find(group.conductors.begin(), group.conductors.end(), id) == group.conductors.end())
                group.conductors.push_back(std::move(id));
    }
    for (auto& [first, group] : groups) {
        auto const& rule = group.only_negative ? negative_side : missing;
        auto finding = finding_of(rule,
                                  fmt::format("{} can be fed through {} with no breaker or fuse in the positive lead{}",
                                              quoted_list(group.loads), quoted_list(group.conductors),
                                              group.only_negative ? ", only in the negative one" : ""),
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
