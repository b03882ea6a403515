// Bodies of open_circuit_curve.hpp.
#pragma once

#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"
#include "bankwright/devices/open_circuit_curve.hpp"

#include <algorithm>

namespace bankwright {

BANKWRIGHT_INLINE OpenCircuitCurve open_circuit_curve(Battery const& battery, Temperature ambient) {
    auto const volts = [&](double charge) {
        return open_circuit_voltage(battery, StateOfCharge::of(charge), ambient).value();
    };
    auto knots = battery.chemistry ? open_circuit_knots(*battery.chemistry) : std::vector<double>{0.0, 1.0};
    if (has_weak_cell(battery)) {
        auto const holds = battery.weak_capacity->value();
        auto own = knots;
        own.push_back(weak_cell_collapse);
        for (auto const charge : own) // the sound cells' when the weak one stands there
            if (auto const sound = 1.0 - holds * (1.0 - charge); sound > 0.0 && sound < 1.0) knots.push_back(sound);
        std::sort(knots.begin(), knots.end());
    }
    return {volts, knots};
}

BANKWRIGHT_INLINE bool share_open_circuit_curve(Battery const& a, Battery const& b) {
    return !has_weak_cell(a) && !has_weak_cell(b) && a.chemistry == b.chemistry && a.dead_cells == b.dead_cells &&
           cell_count(a) == cell_count(b) && a.temperature == b.temperature;
}

} // namespace bankwright
