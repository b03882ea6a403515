// Where does each column of equipment stand, and on which line does each conductor run up or down beside it? Third
// stage of placing, from the spine rightwards, once all heights are known.
#pragma once

#include "bankwright/drawing/layout/battery_places.hpp"
#include "bankwright/drawing/layout/equipment_places.hpp"
#include "bankwright/drawing/layout/legs.hpp"
#include "bankwright/linkage.hpp"

#include <vector>

namespace bankwright::drawing {

struct ColumnPlaces {
    std::vector<double> left; // by column
    double right = 0.0;       // of everything
};

// Does it run from the part on one side straight to the part on the other? Then it needs no line of its own.
bool is_straight(Plan const& plan, EquipmentPlaces const& equipment, Leg const& leg);

// Sets `at` of every vertical leg from the spine rightwards.
ColumnPlaces place_columns(Plan& plan, BatteryPlaces const& batteries, EquipmentPlaces const& equipment);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/layout/column_places_inl.hpp"
#endif
