// Bodies of battery_gravity.hpp.
#pragma once

#include "bankwright/devices/battery_gravity.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/numeric/interpolate.hpp"
#include "bankwright/tables/column.hpp"
#include "bankwright/tables/specific_gravity.hpp"

#include <array>

namespace bankwright {

BANKWRIGHT_INLINE double specific_gravity(StateOfCharge charge, Temperature of_the_acid) {
    namespace t = tables::specific_gravity;
    constexpr std::array<double, 5> charges{0.0, 0.25, 0.5, 0.75, 1.0};
    auto const degrees = tables::column(t::flooded, &t::FloodedRow::fahrenheit);
    auto const now = in_celsius(of_the_acid) * 1.8 + 32.0;
    auto const at = [&](double t::FloodedRow::*column) {
        return numeric::linear(degrees, tables::column(t::flooded, column), now);
    };
    std::array<double, 5> const gravities{at(&t::FloodedRow::sg0), at(&t::FloodedRow::sg25), at(&t::FloodedRow::sg50),
                                          at(&t::FloodedRow::sg75), at(&t::FloodedRow::sg100)};
    return numeric::linear(charges, gravities, charge.value());
}

BANKWRIGHT_INLINE double gravity_at_80_fahrenheit(double gravity, Temperature of_the_acid) {
    auto const& rule = tables::specific_gravity::temperature_rule[0];
    auto const above = in_celsius(of_the_acid) * 1.8 + 32.0 - rule.base_fahrenheit;
    return gravity + rule.gravity * above / rule.step_fahrenheit;
}

BANKWRIGHT_INLINE Voltage cell_voltage_from_gravity(double gravity) {
    return (gravity + tables::specific_gravity::cell_rule[0].volts) * si::volt;
}

BANKWRIGHT_INLINE Temperature freezing_point(double gravity) {
    namespace t = tables::specific_gravity;
    return fahrenheit(numeric::linear(tables::column(t::freezing, &t::FreezingRow::gravity),
                                      tables::column(t::freezing, &t::FreezingRow::fahrenheit), gravity));
}

} // namespace bankwright
