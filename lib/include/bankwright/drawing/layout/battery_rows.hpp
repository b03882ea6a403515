// In which row and column does each battery stand? Series left to right from the negative end, parallel strings
// stacked. Only batteries and what joins them count, so that another load moves none.
#pragma once

#include "bankwright/drawing/layout/wiring_scheme.hpp"
#include "bankwright/linkage.hpp"

#include <vector>

namespace bankwright::drawing {

struct BatteryCell {
    int row = 0;
    int column = 0;
    bool turned = false; // its + is on the left
};

struct BatteryRows {
    int rows = 0;
    int columns = 0;
    std::vector<int> strings;           // by row: how many stand in it
    std::vector<BatteryCell> cells;     // by battery
    std::vector<bool> is_series_jumper; // by wire: joins one battery of a string to the next
};

BatteryRows battery_rows(Scheme const& scheme);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/layout/battery_rows_inl.hpp"
#endif
