// Which conductors tie a bank's own batteries to each other, and which lead away from it?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/wiring/wiring_graph.hpp"

#include <vector>

namespace bankwright {

bool is_device(WiringGraph const& graph, WiringEdge const& edge);

// By edge: it lies on a closed path with a battery, every load and charger removed, and every breaker and fuse too
// unless they are counted as closed. A lead to a load does not.
std::vector<char> on_rings_of_batteries(WiringGraph const& graph, bool through_devices);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/wiring/battery_rings_inl.hpp"
#endif
