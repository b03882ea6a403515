// Bodies of battery_nominal.hpp.
#pragma once

#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/linkage.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bankwright {

BANKWRIGHT_INLINE Voltage nominal_cell_voltage(Chemistry chemistry) {
    switch (chemistry) {
    case Chemistry::lifepo4:
        return 3.2 * si::volt;
    case Chemistry::nmc:
        return 3.6 * si::volt;
    default:
        return 2.0 * si::volt;
    }
}

BANKWRIGHT_INLINE Voltage nominal_voltage(Battery const& battery) {
    if (battery.voltage) return *battery.voltage;
    if (!battery.chemistry || !battery.cells)
        throw std::invalid_argument("battery `" + battery.id + "` needs `voltage`, or `chemistry` and `cells`");
    return nominal_cell_voltage(*battery.chemistry) * static_cast<double>(*battery.cells);
}

BANKWRIGHT_INLINE int cell_count(Battery const& battery) {
    if (battery.cells) return *battery.cells;
    if (!battery.voltage || !battery.chemistry)
        throw std::invalid_argument("battery `" + battery.id + "` needs `cells`, or `voltage` and `chemistry`");
    auto const volts = battery.voltage->value();
    auto per_cell = nominal_cell_voltage(*battery.chemistry).value();
    if (*battery.chemistry == Chemistry::lifepo4) {
        auto const classes = volts / 12.0;
        if (classes >= 1.0 && std::abs(classes - std::round(classes)) < 1e-6) per_cell = 3.0;
    }
    // labels say 3.6 or 3.7 V a cell
    if (*battery.chemistry == Chemistry::nmc) per_cell = 3.65;
    return std::max(1, static_cast<int>(std::lround(volts / per_cell)));
}

BANKWRIGHT_INLINE double twelve_volt_classes(Battery const& battery) {
    auto const classes = nominal_voltage(battery).value() / 12.0;
    return classes < 0.75 ? classes : std::round(classes);
}

BANKWRIGHT_INLINE bool fits_system(Voltage sum, bool lithium, Voltage system) {
    auto const slack = lithium ? 0.08 : 0.01;
    return std::abs(sum.value() - system.value()) <= slack * std::abs(system.value()) * (1.0 + 1e-9);
}

} // namespace bankwright
