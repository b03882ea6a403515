// What does a hydrometer reading of a flooded cell say of its voltage, and when does the acid freeze?
// Sources: data/tables/specific_gravity.toml.
#pragma once

#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"

namespace bankwright {

// The reading as it would be at 80 degF: 0.001 for every 3 degF, added above, taken away below [read twice].
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
