// In which row and column does everything but the batteries stand? Columns count outwards from the bank, a feed stays
// in its row, and what is on the negative side comes below.
#pragma once

#include "bankwright/drawing/layout/wiring_scheme.hpp"
#include "bankwright/linkage.hpp"

#include <vector>

namespace bankwright::drawing {

struct EquipmentCell {
    int row = 0;
    int column = 0;
    int depth = 0;       // how far from the bank; the column, unless the grid is folded
    bool turned = false; // load side, terminal 2 or plug toward the bank
};

struct EquipmentGrid {
    int rows = 0;
    int columns = 0;
    std::vector<EquipmentCell> cells; // by equipment

    // Is this end of the wire landed on the left of its part? A busbar takes each conductor on the side it comes from;
    // motors, loads and chargers have all their terminals on the left.
    bool is_left(Scheme const& scheme, Wire const& wire, int end) const;
};

// What would stand beyond the last of `most_columns` begins again at the first, below all that is nearer the bank.
EquipmentGrid equipment_grid(Scheme const& scheme, int most_columns);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/layout/equipment_grid_inl.hpp"
#endif
