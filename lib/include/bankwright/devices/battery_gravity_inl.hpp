// Bodies of battery_gravity.hpp.
#pragma once

#include "bankwright/devices/battery_gravity.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/numeric/interpolate.hpp"
#include "bankwright/tables/column.hpp"
#include "bankwright/tables/specific_gravity.hpp"

namespace bankwright {

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
