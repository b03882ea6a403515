// Bodies of charger_limits.hpp.
#pragma once

#include "bankwright/devices/charger_limits.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/tables/chemistries.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bankwright {

BANKWRIGHT_INLINE ChargeStages charge_stages(Chemistry chemistry, int cells) {
    auto const& row = tables::chemistries::charge_voltages[static_cast<std::size_t>(chemistry)];
    auto const across = [cells](double cell) { return cell * cells * si::volt; };
    return {across(row.absorption_low), across(row.absorption_high), across(row.float_low), across(row.float_high)};
}

BANKWRIGHT_INLINE ChargeRange charge_range(Chemistry chemistry, int cells) {
    auto const stages = charge_stages(chemistry, cells);
    auto source = tables::chemistries::charge_voltages_source;
    source.confidence = tables::chemistries::charge_voltages[static_cast<std::size_t>(chemistry)].mark;
    return {stages.float_low, stages.absorption_high, source};
}

BANKWRIGHT_INLINE Voltage temperature_compensation(Chemistry chemistry, int cells, Temperature temperature) {
    if (is_lithium(chemistry)) return Voltage{};
    return -0.004 * cells * (in_celsius(temperature) - 25.0) * si::volt;
}

BANKWRIGHT_INLINE Voltage held_voltage(Charger const& charger, Temperature of_the_batteries) {
    if (!charger.voltage) throw std::invalid_argument("charger `" + charger.id + "` needs `voltage`");
    if (!charger.compensation) return *charger.voltage;
    constexpr double usual_cell = 2.35; // [V] between float and absorption
    auto const cells = 3.0 * std::max(1.0, std::round(charger.voltage->value() / (3.0 * usual_cell)));
    auto const warmer = kelvins(in_celsius(of_the_batteries) - 25.0);
    return *charger.voltage + Voltage(cells * *charger.compensation * warmer);
}

} // namespace bankwright
