// Where does each battery stand, and on which line does each conductor run above it? First stage of placing: it looks
// at the batteries and their own wiring alone, and leaves a fixed reserve for everything else.
#pragma once

#include "bankwright/drawing/drawing.hpp"
#include "bankwright/drawing/layout/legs.hpp"
#include "bankwright/linkage.hpp"

#include <vector>

namespace bankwright::drawing {

struct BatteryPlaces {
    std::vector<Box> boxes; // by battery
    double right = 0.0;     // where the spine begins
    double bottom = 0.0;
    std::vector<double> columns; // left edge of each column
    std::vector<double> rows;    // upper edge of each row

    Point post(BatteryRows const& rows, End const& end) const;
};

// Sets `at` of every leg among the batteries, the spine excepted.
BatteryPlaces place_batteries(Plan& plan);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/layout/battery_places_inl.hpp"
#endif
