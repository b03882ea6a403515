// Bodies of battery_rings.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/blocks.hpp"
#include "bankwright/wiring/battery_rings.hpp"

#include <algorithm>

namespace bankwright {

BANKWRIGHT_INLINE bool is_device(WiringGraph const& graph, WiringEdge const& edge) {
    auto const kind = graph.parts[as_index(edge.part)].kind;
    return edge.kind == WiringEdgeKind::contact && (kind == PartKind::breaker || kind == PartKind::fuse);
}

BANKWRIGHT_INLINE std::vector<char> on_rings_of_batteries(WiringGraph const& graph, bool through_devices) {
    std::vector<BlockEdge> wires;
    std::vector<std::size_t> which;
    for (std::size_t e = 0; e < graph.edges.size(); ++e) {
        auto const& edge = graph.edges[e];
        if (edge.kind == WiringEdgeKind::load || edge.kind == WiringEdgeKind::charger || edge.from == edge.to) continue;
        if (!through_devices && is_device(graph, edge)) continue;
        wires.push_back({edge.from, edge.to});
        which.push_back(e);
    }
    std::vector<char> on_ring(graph.edges.size(), 0);
    for_each_block(static_cast<int>(graph.terminals.size()), wires, [&](std::vector<int> const& block) {
        auto const is_battery = [&](int b) { return graph.edges[which[as_index(b)]].kind == WiringEdgeKind::battery; };
        if (block.size() < 2 || std::none_of(block.begin(), block.end(), is_battery)) return;
        for (auto const b : block)
            on_ring[which[as_index(b)]] = 1;
    });
    return on_ring;
}

} // namespace bankwright
