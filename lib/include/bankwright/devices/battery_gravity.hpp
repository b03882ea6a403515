// What does a hydrometer reading of a flooded cell say of its voltage, and when does the acid freeze?
// Sources: data/tables/specific_gravity.toml.
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"

namespace bankwright {

// What a hydrometer shows in a rested cell at a state of charge and a temperature: straight between the points of the
// table, in which it falls evenly with the charge, and held beyond its temperatures (0 to 120 degF).
double specific_gravity(StateOfCharge, Temperature of_the_acid);

// The reading as it would be at 80 degF: 0.004 for every 10 degF, added above, taken away below.
double gravity_at_80_fahrenheit(double gravity, Temperature of_the_acid);

// Open-circuit voltage of one cell: gravity + 0.845 V (DOE-HDBK-1084-95). Up to 0.1 V for six cells below the published
// table of voltages when discharged.
Voltage cell_voltage_from_gravity(double gravity_at_80_fahrenheit);

// Where the acid freezes; straight between the published points and held beyond them.
Temperature freezing_point(double gravity_at_80_fahrenheit);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/battery_gravity_inl.hpp"
#endif
