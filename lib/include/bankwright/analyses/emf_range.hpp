// What may a battery give at rest whose charge is known only so well?
#pragma once

#include "bankwright/devices/battery.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/units/fractions.hpp"
#include "bankwright/units/temperature.hpp"

#include <algorithm>

namespace bankwright {

struct EmfRange {
    double low = 0.0;  // [V]
    double high = 0.0; // [V]
};

// Between two charges, as shares; beyond empty and full nothing is gained. By its chemistry: throws
// std::invalid_argument if the battery states none.
inline EmfRange emf_range(Battery const& battery, double least_charge, double most_charge, Temperature ambient) {
    auto const at = [&](double charge) {
        return open_circuit_voltage(battery, StateOfCharge::of(std::clamp(charge, 0.0, 1.0)), ambient).value();
    };
    return {at(least_charge), at(most_charge)};
}

} // namespace bankwright
