// Where does everything but the batteries stand, at which height does each conductor meet it, and on which line does it
// run between the rows? Second stage of placing, row by row from the top.
#pragma once

#include "bankwright/drawing/layout/battery_places.hpp"
#include "bankwright/drawing/layout/legs.hpp"
#include "bankwright/linkage.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace bankwright::drawing {

struct TerminalReach { // of one terminal: the heights at which conductors meet it, or may
    bool left = true;
    double top = 0.0;
    double bottom = 0.0;
};

struct EquipmentPlaces {
    std::vector<double> top;                           // by equipment
    std::vector<double> height;                        // by equipment
    std::vector<double> width;                         // by equipment
    std::vector<std::vector<TerminalReach>> terminals; // by equipment; a busbar has one reach for both sides
    std::vector<std::array<double, 2>> lug;            // by wire, by end: the height at which it meets its terminal
    double bottom = 0.0;
};

// Sets `at` of every horizontal leg among the equipment.
EquipmentPlaces place_equipment(Plan& plan);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/layout/equipment_places_inl.hpp"
#endif
