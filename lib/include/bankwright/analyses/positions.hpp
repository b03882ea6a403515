// In which positions of its selectors, relays and joining switches is a bank looked at, and which batteries are then
// one bank?
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/wiring/wiring_graph.hpp"

#include <string>
#include <vector>

namespace bankwright {

// The bank with every selector and relay where the position has it. A switch that is drawn open between two banks
// stands in it as a relay that is open, or closed.
struct SwitchPosition {
    std::string words; // "with `SEL` on both"; empty for a bank that has no such device
    Bank bank;
};

// The one that the file describes first; then each device in each of its other positions, the others as they are.
std::vector<SwitchPosition> positions_of(Bank const& bank);

// The edges with the contacts of selectors and relays that are open in this bank removed.
std::vector<WiringEdge> standing_edges(Bank const& bank, WiringGraph const& graph);

// By battery: the number of its bank. Batteries in series, or on a ring, are one bank; those that share only one post
// are not.
std::vector<int> bank_of_batteries(WiringGraph const& graph, std::vector<WiringEdge> const& edges);

// The same with every selector off, and every relay and every switch drawn open open.
std::vector<int> separable_banks(Bank const& bank);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/positions_inl.hpp"
#endif
