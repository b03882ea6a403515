// Bodies of battery_reversal.hpp.
#pragma once

#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_reversal.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"
#include "bankwright/linkage.hpp"

#include <stdexcept>

namespace bankwright {

BANKWRIGHT_INLINE Voltage weak_cell_voltage(Battery const& battery, StateOfCharge of_the_sound, Current current,
                                            Temperature ambient) {
    if (!has_weak_cell(battery) || !battery.chemistry)
        throw std::invalid_argument("battery `" + battery.id + "` needs `weak_cells`, `weak_capacity` and `chemistry`");
    // Its share of the whole battery's resistance, more than an even one by as much as an emptier cell resists more.
    auto const own = resistance_ratio(*battery.chemistry, weak_cell_charge(battery, of_the_sound));
    auto const sound = resistance_ratio(*battery.chemistry, of_the_sound);
    auto const weak = static_cast<double>(*battery.weak_cells);
    auto const share = own / (weak * own + (static_cast<double>(cell_count(battery)) - weak) * sound);
    return weak_cell_open_circuit_voltage(battery, of_the_sound, ambient) -
           current * internal_resistance(battery, of_the_sound, ambient) * share;
}

} // namespace bankwright
