// The stretches of conductors in their channels, while they are being placed.
#pragma once

#include "bankwright/drawing/wires/channel_routes.hpp"

#include <cstddef>
#include <vector>

namespace bankwright::drawing {

// One conductor in one channel.
struct Leg {
    std::size_t wire = 0;
    std::size_t step = 0; // in its route
    bool labeled = false; // its line has room for a label on either side
    double at = 0.0;      // y of a horizontal one, x of a vertical one, once it is known
};

// What is decided so far: each stage of placing reads what the stages before it have found.
struct Plan {
    Scheme scheme;
    BatteryRows batteries;
    EquipmentGrid equipment;
    std::vector<Route> routes;
    std::vector<std::vector<Leg>> legs; // by wire, by step of its route

    Wire const& wire(Leg const& leg) const { return scheme.wires[leg.wire]; }
    Channel channel(Leg const& leg) const { return routes[leg.wire][leg.step]; }
    bool is_first(Leg const& leg) const { return leg.step == 0; }
    bool is_last(Leg const& leg) const { return leg.step + 1 == routes[leg.wire].size(); }
    Leg const& before(Leg const& leg) const { return legs[leg.wire][leg.step - 1]; }
    Leg const& after(Leg const& leg) const { return legs[leg.wire][leg.step + 1]; }

    std::vector<Leg*> legs_in(Channel channel) {
        std::vector<Leg*> found;
        for (auto& of_wire : legs)
            for (auto& leg : of_wire)
                if (this->channel(leg) == channel) found.push_back(&leg);
        return found;
    }
};

} // namespace bankwright::drawing
