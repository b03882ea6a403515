// How a repair and a loop are said to a rigger: which end, off which post, onto which post.
#pragma once

#include "bankwright/wiring/wiring_repair.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright {

// "`A`, `B` and `C`"
inline std::string quoted_list(std::vector<std::string> const& ids) {
    std::string text;
    for (std::size_t i = 0; i < ids.size(); ++i)
        text += fmt::format("{}`{}`", i == 0 ? "" : i + 1 == ids.size() ? " and " : ", ", ids[i]);
    return text;
}

// What a conductor does now: "`J1` (`A+` to `B+`)".
inline std::string name_conductor(WiringGraph const& graph, WiringEdge const& edge) {
    return fmt::format("`{}` (`{}` to `{}`)", graph.id(edge), graph.name(edge.from), graph.name(edge.to));
}

inline std::string say(WiringGraph const& graph, std::vector<WiringEdge> const& edges, Repair const& repair) {
    switch (repair.kind) {
    case RepairKind::turn_battery: {
        auto const& id = graph.parts[static_cast<std::size_t>(repair.part)].id;
        return fmt::format("turn `{0}` around, or swap what is landed on `{0}+` and `{0}-`", id);
    }
    case RepairKind::swap_leads:
        return fmt::format("swap the conductors on `{}` and `{}`", graph.name(repair.at), graph.name(repair.onto));
    case RepairKind::move_end: {
        auto const& edge = edges[static_cast<std::size_t>(repair.edge)];
        return fmt::format("move the end of `{}` that is on `{}` to `{}`", graph.id(edge), graph.name(repair.at),
                           graph.name(repair.onto));
    }
    case RepairKind::remove:
        return fmt::format("remove {}", name_conductor(graph, edges[static_cast<std::size_t>(repair.edge)]));
    case RepairKind::add:
        return fmt::format("join `{}` and `{}`", graph.name(repair.at), graph.name(repair.onto));
    }
    return {};
}

// The ways that do equally well, each once, at most three: more would be noise.
inline std::string say_all(WiringGraph const& graph, std::vector<WiringEdge> const& edges,
                           std::vector<Repair> const& repairs) {
    std::string text;
    for (std::size_t i = 0; i < repairs.size() && i < 3; ++i) {
        text += i == 0 ? "" : "; or ";
        text += say(graph, edges, repairs[i]);
    }
    return text;
}

// The parts that a set of equally good repairs blames, the likeliest first.
inline std::vector<std::string> blamed(WiringGraph const& graph, std::vector<Repair> const& repairs) {
    std::vector<std::string> ids;
    auto const blame = [&](std::string const& id) {
        if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
    };
    for (auto const& repair : repairs) {
        if (repair.kind == RepairKind::add) {
            blame(graph.owner_of(repair.at).id);
            blame(graph.owner_of(repair.onto).id);
        } else {
            blame(graph.parts[static_cast<std::size_t>(repair.part)].id);
        }
    }
    return ids;
}

inline void keep_first_of_each(std::vector<std::string>& ids) {
    std::vector<std::string> kept;
    for (auto& id : ids)
        if (std::find(kept.begin(), kept.end(), id) == kept.end()) kept.push_back(std::move(id));
    ids = std::move(kept);
}

} // namespace bankwright
