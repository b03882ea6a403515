// Which conductors lie behind a device, and how far is it from the battery? Walks over the wiring, stopping at every
// breaker and fuse.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/wiring/wiring_graph.hpp"

#include <optional>
#include <vector>

namespace bankwright {

// What a breaker or fuse opens, and no other device nearer to the loads does.
struct ProtectedRegion {
    // Conductor edges: from its far side on to the loads and the next devices, and of the ways back to the bank those
    // that carry what returns through no single other device behind it.
    std::vector<int> conductors;
    std::vector<int> loads; // load edges that have no other device before them
};

// The conductors from the nearest battery post to the device, in order from the post.
struct FeedPath {
    std::vector<int> edges; // conductors and contacts
    int post = 0;           // terminal
};

// Of the contact edge of a breaker or fuse. Its far side is the one that no battery's positive post reaches without a
// device; a device that batteries reach on both sides, or on neither, has no far side, and its region is empty.
ProtectedRegion protected_region(WiringGraph const& graph, int device_edge);

// None if no battery's positive post reaches the device but through another device.
std::optional<FeedPath> feed_path(WiringGraph const& graph, int device_edge);

// Conductors and contacts, devices among them, from the nearest positive post to a motor's or load's + and from its -
// back to the nearest negative post, by whichever way passes fewest of them.
std::vector<int> supply_path(WiringGraph const& graph, int load_edge);

// By terminal: a number that it shares with those to which conductors and closed contacts join it with no breaker or
// fuse between.
std::vector<int> regions_without_device(WiringGraph const& graph);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/wiring/wiring_regions_inl.hpp"
#endif
