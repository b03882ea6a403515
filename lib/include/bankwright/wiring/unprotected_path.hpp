// Can current from a battery reach a load without passing a breaker or fuse?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/wiring/wiring_graph.hpp"

#include <vector>

namespace bankwright {

struct UnprotectedPath {
    int load_edge = 0;          // the motor or load that is reached
    std::vector<int> edges;     // conductors and contacts from the battery's post to the load's +, in order
    bool only_negative = false; // there is a device, but in the negative lead
};

// One shortest path for every motor or load whose + is reached from a battery's positive post without a device.
std::vector<UnprotectedPath> unprotected_paths(WiringGraph const& graph);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/wiring/unprotected_path_inl.hpp"
#endif
