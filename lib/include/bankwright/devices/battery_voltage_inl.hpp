// Bodies of battery_voltage.hpp: each chemistry's curve from its table.
#pragma once

#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/numeric/interpolate.hpp"
#include "bankwright/tables/column.hpp"
#include "bankwright/tables/open_circuit_voltage.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <stdexcept>

namespace bankwright {

namespace internal::open_circuit_curves {

inline constexpr std::array<double, 5> charges{0.0, 0.25, 0.5, 0.75, 1.0};
inline constexpr double bend = 1.25;             // Shepherd's pole, over deep_charge
inline constexpr double end_of_discharge = 1.75; // [V] of a lead-acid cell, SAE J537

// The five voltages of six lead-acid cells at a temperature, each interpolated down its column.
template <class Rows>
std::array<double, 5> lead_at(Rows const& rows, Temperature temperature) {
    using Row = tables::open_circuit_voltage::LeadRow;
    auto const degrees = tables::column(rows, &Row::fahrenheit);
    auto const now = in_celsius(temperature) * 1.8 + 32.0;
    auto const volts = [&](double Row::*charge) { return numeric::linear(degrees, tables::column(rows, charge), now); };
    return {volts(&Row::v0), volts(&Row::v25), volts(&Row::v50), volts(&Row::v75), volts(&Row::v100)};
}

// Middle of the printed ranges at 25 degC, moved as the full flooded battery moves.
inline std::array<double, 5> agm_at(Temperature temperature) {
    namespace t = tables::open_circuit_voltage;
    auto const shift = lead_at(t::flooded, temperature)[4] - lead_at(t::flooded, celsius(25.0))[4];
    std::array<double, 5> volts{};
    for (std::size_t k = 0; k < 5; ++k)
        volts[k] = 0.5 * (t::agm[k].volts_low + t::agm[k].volts_high) + shift;
    return volts;
}

// [V] what a cell whose level at hand is below nothing shows less than an empty one at rest.
inline double starved(double empty, double charge) {
    auto const deep = deep_charge(Chemistry::flooded);
    auto const depth = std::min(-charge / deep, 1.0);
    return (empty - end_of_discharge) * (bend - 1.0) * depth / (bend - depth);
}

inline double lead_cell(std::array<double, 5> const& six_cells, double charge) {
    if (charge < 0.0) return six_cells[0] / 6.0 - starved(six_cells[0] / 6.0, charge);
    return numeric::monotone_cubic(charges, six_cells, charge) / 6.0;
}

// Of the first `used` rows, the last of them being full.
template <class Rows>
auto lithium_charges(Rows const& rows, std::size_t used) {
    auto x = tables::column(rows, &tables::open_circuit_voltage::LithiumRow::charge);
    x[used - 1] = 1.0;
    return x;
}

template <class Rows>
double lithium_cell(Rows const& rows, std::size_t used, double charge) {
    auto const x = lithium_charges(rows, used);
    auto const y = tables::column(rows, &tables::open_circuit_voltage::LithiumRow::volts);
    return numeric::linear(std::span<double const>(x).first(used), std::span<double const>(y).first(used), charge);
}

} // namespace internal::open_circuit_curves

BANKWRIGHT_INLINE Voltage open_circuit_cell_voltage(Chemistry chemistry, StateOfCharge charge,
                                                    Temperature temperature) {
    namespace t = tables::open_circuit_voltage;
    namespace curves = internal::open_circuit_curves;
    auto const s = charge.value();
    switch (chemistry) {
    case Chemistry::flooded:
        return curves::lead_cell(curves::lead_at(t::flooded, temperature), s) * si::volt;
    case Chemistry::gel:
        return curves::lead_cell(curves::lead_at(t::gel, temperature), s) * si::volt;
    case Chemistry::agm:
        return curves::lead_cell(curves::agm_at(temperature), s) * si::volt;
    case Chemistry::lifepo4:
        return curves::lithium_cell(t::lifepo4, t::lifepo4.size() - 1, s) * si::volt;
    case Chemistry::nmc:
        break;
    }
    return curves::lithium_cell(t::nmc, t::nmc.size(), s) * si::volt;
}

BANKWRIGHT_INLINE std::vector<double> open_circuit_knots(Chemistry chemistry) {
    namespace t = tables::open_circuit_voltage;
    namespace curves = internal::open_circuit_curves;
    auto const first = [](auto const& column, std::size_t count) {
        return std::vector<double>(column.begin(), column.begin() + static_cast<std::ptrdiff_t>(count));
    };
    if (!is_lithium(chemistry)) {
        // each piece as much nearer to the pole than the last
        constexpr int pieces = 6;
        std::vector<double> knots;
        for (int k = pieces; k > 0; --k)
            knots.push_back(curves::bend * std::expm1(-std::log(curves::bend / (curves::bend - 1.0)) * k / pieces) *
                            deep_charge(chemistry));
        knots.front() = -deep_charge(chemistry);
        knots.insert(knots.end(), curves::charges.begin(), curves::charges.end());
        return knots;
    }
    if (chemistry == Chemistry::nmc) return first(curves::lithium_charges(t::nmc, t::nmc.size()), t::nmc.size());
    auto const used = t::lifepo4.size() - 1;
    return first(curves::lithium_charges(t::lifepo4, used), used);
}

BANKWRIGHT_INLINE Voltage weak_cell_open_circuit_voltage(Battery const& battery, StateOfCharge of_the_sound,
                                                         Temperature ambient) {
    if (!battery.chemistry) throw std::invalid_argument("battery `" + battery.id + "` needs `chemistry`");
    auto const charge = weak_cell_charge(battery, of_the_sound);
    return open_circuit_cell_voltage(*battery.chemistry, charge, battery.temperature.value_or(ambient)) *
           std::min(1.0, charge.value() / weak_cell_collapse);
}

BANKWRIGHT_INLINE Voltage open_circuit_voltage(Battery const& battery, StateOfCharge charge, Temperature ambient) {
    if (!battery.chemistry)
        throw std::invalid_argument("battery `" + battery.id + "` needs `chemistry`, or `emf` and `resistance`");
    auto const living = std::max(0, cell_count(battery) - battery.dead_cells.value_or(0));
    auto const weak = has_weak_cell(battery) ? std::min(living, *battery.weak_cells) : 0;
    auto const sound = open_circuit_cell_voltage(*battery.chemistry, charge, battery.temperature.value_or(ambient)) *
                       static_cast<double>(living - weak);
    return weak == 0 ? sound
                     : sound + weak_cell_open_circuit_voltage(battery, charge, ambient) * static_cast<double>(weak);
}

BANKWRIGHT_INLINE Voltage open_circuit_voltage(Battery const& battery, Temperature ambient) {
    if (battery.emf) return *battery.emf;
    return open_circuit_voltage(battery, battery.charge.value_or(StateOfCharge::of(1.0)), ambient);
}

BANKWRIGHT_INLINE Voltage meter_error(MeterAccuracy const& meter, Voltage reading) {
    return std::abs(reading.value()) * meter.of_reading * si::volt + static_cast<double>(meter.counts) * meter.digit;
}

BANKWRIGHT_INLINE ChargeEstimate charge_from_voltage(Battery const& battery, Voltage rested, Temperature ambient,
                                                     MeterAccuracy const& meter) {
    auto const at = [&](Voltage reading) {
        auto const volts = [&](double charge) {
            return open_circuit_voltage(battery, StateOfCharge::of(charge), ambient).value();
        };
        return StateOfCharge::of(numeric::inverse(volts, reading.value(), 0.0, 1.0));
    };
    auto const error = meter_error(meter, rested);
    return {at(rested - error), at(rested), at(rested + error)};
}

} // namespace bankwright
