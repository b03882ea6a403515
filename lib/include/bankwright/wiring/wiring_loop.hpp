// A closed loop, post by post: which way does it go, and what does it add up to?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/wiring/wiring_graph.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct LoopStep {
    int edge = 0;
    bool forward = true; // from the edge's `from` to its `to`
};

struct WiringLoop {
    std::vector<LoopStep> steps; // starts with the battery asked for, from its negative to its positive post
    double volts = 0.0;          // [V] sum of the batteries' counted voltages around the loop
};

// The loop with the fewest batteries, then the fewest conductors, that runs through this battery edge and does not add
// up to nothing; none if there is no such loop.
std::optional<WiringLoop> shortest_loop(WiringGraph const& graph, std::vector<WiringEdge> const& edges,
                                        int battery_edge);

// "`A+` - J1 - `B+` - B - `B-` - ..." for people.
std::string describe(WiringGraph const& graph, std::vector<WiringEdge> const& edges, WiringLoop const& loop);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/wiring/wiring_loop_inl.hpp"
#endif
