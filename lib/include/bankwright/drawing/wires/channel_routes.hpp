// Through which channels does each conductor run? Channels lie between the rows and columns, never through a part.
//
// Batteries stand in rows 0..R-1 and columns 0..C-1, everything else in rows 0..Q-1 and columns 0..K-1 to the right of
// them. Vertical channels are counted from the left: 0..C-1 left of each column of batteries, C (the spine) between the
// batteries and the rest, C+1..C+K right of each column of equipment. Horizontal ones: a channel above each row of
// batteries, which ends in the spine, then one above each row of equipment and one below the last, which begin there.
#pragma once

#include "bankwright/drawing/layout/battery_rows.hpp"
#include "bankwright/drawing/layout/equipment_grid.hpp"
#include "bankwright/drawing/layout/wiring_scheme.hpp"
#include "bankwright/linkage.hpp"

#include <vector>

namespace bankwright::drawing {

struct Channel {
    bool horizontal = false;
    int number = 0;
    friend bool operator==(Channel const&, Channel const&) = default;
};

struct ChannelMap {
    int battery_rows = 0;
    int battery_columns = 0;
    int equipment_rows = 0;
    int equipment_columns = 0;

    int spine() const { return battery_columns; }
    int vertical() const { return battery_columns + equipment_columns + 1; }
    int horizontal() const { return battery_rows + equipment_rows + 1; }
    bool beside_batteries(Channel c) const { return c.number < (c.horizontal ? battery_rows : battery_columns); }
};

// Horizontal and vertical channels by turns; two that follow each other cross at one place.
using Route = std::vector<Channel>;

// The shortest with few bends, wire by wire. A conductor between two batteries stays among the batteries.
std::vector<Route> channel_routes(Scheme const& scheme, BatteryRows const& batteries, EquipmentGrid const& equipment);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/wires/channel_routes_inl.hpp"
#endif
