// Which single change would make a wrong wiring right? Every change is tried on the graph; what is left is the cause.
#pragma once

#include "bankwright/wiring/arrangement.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <vector>

namespace bankwright {

enum class RepairKind {
    turn_battery, // a battery is the wrong way around
    swap_leads,   // the two leads of a motor, load, connector or charger output are exchanged
    move_end,     // one end of a conductor belongs on another terminal
    remove,       // a conductor that should not be there
    add,          // a conductor that is missing
};

struct Repair {
    RepairKind kind = RepairKind::move_end;
    int part = -1;           // index in WiringGraph::parts; add: none
    int edge = -1;           // turn_battery, move_end, remove: the edge
    bool moves_from = false; // move_end: it is the conductor's `from` that moves
    int at = -1;             // swap_leads: the + terminal; move_end: where the end is now; add: one end
    int onto = -1;           // swap_leads: the - terminal; move_end: where it belongs; add: the other end

    // How much is still wrong, then how natural the repaired bank is: lower is better. In this order.
    int wrongs = 0;
    int irregular = 0;      // it is no nSmP
    int marking_faults = 0; // colors, poles and breakers on the wrong side
    int bare = 0;           // terminals of batteries and devices on which nothing is landed
};

// What was done, in turn, to make the wiring right. Each step holds the repairs that do equally well, the likeliest
// first.
struct RepairPlan {
    std::vector<std::vector<Repair>> steps;
    bool complete = false; // after the last step the wiring is right
};

// One change if one is enough; else two batteries turned around; else the change that mends most, and so on, four at
// most. No step where there are so many parts (some two hundred conductors) that the search would take long.
RepairPlan plan_repair(WiringGraph const& graph, std::vector<WiringEdge> const& edges);

// The edges after a repair.
std::vector<WiringEdge> repaired(std::vector<WiringEdge> edges, Repair const& repair);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/wiring/wiring_repair_inl.hpp"
#endif
