// Bodies of battery_resistance.hpp: the three ways to a value, and how it moves.
#pragma once

#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/numeric/interpolate.hpp"
#include "bankwright/tables/column.hpp"
#include "bankwright/tables/internal_resistance.hpp"

#include <cmath>
#include <stdexcept>

namespace bankwright {

namespace internal::resistance_curves {

// Straight on a logarithmic scale between the points, held beyond them.
template <class Points>
double logarithmic(Points const& x, Points y, double at) {
    for (auto& value : y)
        value = std::log(value);
    return std::exp(numeric::linear(x, y, at));
}

// Resistance of a lead-acid battery goes as the inverse of its cranking power.
inline double lead_temperature(double celsius_now) {
    namespace t = tables::internal_resistance;
    return 1.0 / logarithmic(tables::column(t::lead_power, &t::LeadPowerRow::fahrenheit),
                             tables::column(t::lead_power, &t::LeadPowerRow::power), celsius_now * 1.8 + 32.0);
}

inline double lithium_temperature(double celsius_now) {
    namespace t = tables::internal_resistance;
    return logarithmic(tables::column(t::lithium_cold, &t::LithiumColdRow::celsius),
                       tables::column(t::lithium_cold, &t::LithiumColdRow::ratio), celsius_now);
}

// Over that of a cell of 100 Ah.
inline double by_size(Chemistry chemistry, double ampere_hours) {
    namespace t = tables::internal_resistance;
    if (chemistry != Chemistry::flooded) return 100.0 / ampere_hours;
    auto sizes = tables::column(t::flooded_size, &t::FloodedSizeRow::ampere_hours);
    auto const covered = std::fmin(sizes.back(), std::fmax(sizes.front(), ampere_hours));
    for (auto& size : sizes)
        size = std::log(size);
    return logarithmic(sizes, tables::column(t::flooded_size, &t::FloodedSizeRow::ratio), std::log(covered)) * covered /
           ampere_hours;
}

inline constexpr double cranking_celsius = -18.0;          // SAE J537
inline constexpr double cranking_volts_per_12_volts = 7.2; // SAE J537

} // namespace internal::resistance_curves

BANKWRIGHT_INLINE double resistance_ratio(Chemistry chemistry, Temperature temperature) {
    auto const now = in_celsius(temperature);
    if (is_lithium(chemistry)) return internal::resistance_curves::lithium_temperature(now);
    return internal::resistance_curves::lead_temperature(now) / internal::resistance_curves::lead_temperature(25.0);
}

BANKWRIGHT_INLINE double resistance_ratio(Chemistry chemistry, StateOfCharge charge) {
    namespace t = tables::internal_resistance;
    if (is_lithium(chemistry)) {
        auto const& row = t::lithium_charge[0];
        auto const at = [&](double s) { return row.ohms_empty * std::exp(-row.exponent * s) + row.ohms_full; };
        return at(std::fmin(1.0, std::fmax(0.0, charge.value()))) / at(1.0);
    }
    return numeric::linear(tables::column(t::lead_charge, &t::LeadChargeRow::charge),
                           tables::column(t::lead_charge, &t::LeadChargeRow::ratio), charge.value());
}

BANKWRIGHT_INLINE Resistance internal_resistance(Battery const& battery, StateOfCharge charge, Temperature ambient) {
    namespace t = tables::internal_resistance;
    if (battery.resistance) return *battery.resistance;
    if (!battery.chemistry)
        throw std::invalid_argument("battery `" + battery.id + "` needs `resistance`, or `chemistry`");
    auto const chemistry = *battery.chemistry;
    auto const temperature = battery.temperature.value_or(ambient);
    auto const by_charge = [&] {
        auto const sound = resistance_ratio(chemistry, charge);
        if (!has_weak_cell(battery)) return sound;
        auto const weak = static_cast<double>(*battery.weak_cells) / cell_count(battery);
        return sound + weak * (resistance_ratio(chemistry, weak_cell_charge(battery, charge)) - sound);
    };
    auto const moved = resistance_ratio(chemistry, temperature) * by_charge();
    if (battery.cranking) {
        auto const cold = celsius(internal::resistance_curves::cranking_celsius);
        auto const emf =
            open_circuit_cell_voltage(chemistry, StateOfCharge::of(1.0), cold).value() * cell_count(battery);
        auto const held = internal::resistance_curves::cranking_volts_per_12_volts * twelve_volt_classes(battery);
        return (emf - held) / battery.cranking->value() / resistance_ratio(chemistry, cold) * moved * si::ohm;
    }
    if (!battery.capacity)
        throw std::invalid_argument("battery `" + battery.id + "` needs `resistance`, `cranking` or `capacity`");
    auto const cell = t::per_cell[static_cast<std::size_t>(chemistry)].ohms;
    auto const size = internal::resistance_curves::by_size(chemistry, battery.capacity->value() / 3600.0);
    return cell * cell_count(battery) * size * moved * si::ohm;
}

BANKWRIGHT_INLINE Resistance internal_resistance(Battery const& battery, Temperature ambient) {
    return internal_resistance(battery, battery.charge.value_or(StateOfCharge::of(1.0)), ambient);
}

BANKWRIGHT_INLINE Spread resistance_spread(Battery const& battery) {
    if (battery.resistance || !battery.chemistry) return stated_resistance_spread;
    if (battery.cranking) return Spread::percent(40);
    return Spread::of(tables::internal_resistance::per_cell[static_cast<std::size_t>(*battery.chemistry)].spread);
}

BANKWRIGHT_INLINE Source internal_resistance_source(Battery const& battery) {
    if (battery.resistance) return {"the battery's own description", "`resistance`", "as given", "stated"};
    if (battery.cranking)
        return {"SAE J537", "cold cranking: 7.2 V per 12 V held for 30 s at -18 degC", "as restated by service texts",
                "definition quoted: two service texts; the resistance is derived, and an upper bound"};
    return tables::internal_resistance::per_cell_source;
}

} // namespace bankwright
