// What becomes of a cell that holds less than its neighbors?
//
// All cells of a battery were full together and carry one current, so that what the sound ones have given the weak one
// has given too: it stands at 1 - (1 - s) / w while they stand at s, w being its share of a sound cell's capacity
// (charge balance in series). Once it is empty its voltage collapses (battery_voltage.hpp), and the current that the
// others drive through it turns it around (battery_reversal.hpp).
#pragma once

#include "bankwright/devices/battery.hpp"

#include <algorithm>

namespace bankwright {

// `weak_cells` and `weak_capacity` say so; a cell that holds all that the others do is not weak.
inline bool has_weak_cell(Battery const& battery) {
    return battery.weak_cells.value_or(0) > 0 && battery.weak_capacity && battery.weak_capacity->value() < 1.0;
}

// Of a weak cell, when the sound ones stand at this. 0 once it is empty.
inline StateOfCharge weak_cell_charge(Battery const& battery, StateOfCharge of_the_sound) {
    auto const holds = battery.weak_capacity.value_or(Health::of(1.0)).value();
    return StateOfCharge::of(std::clamp(1.0 - (1.0 - of_the_sound.value()) / holds, 0.0, 1.0));
}

// The charge of the sound cells at which the weak one is empty.
inline StateOfCharge weak_cell_empties_at(Battery const& battery) {
    return StateOfCharge::of(std::max(0.0, 1.0 - battery.weak_capacity.value_or(Health::of(1.0)).value()));
}

} // namespace bankwright
