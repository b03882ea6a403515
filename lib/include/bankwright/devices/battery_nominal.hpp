// What does a battery's label make of it: how many cells, which nominal voltage, which class of system?
#pragma once

#include "bankwright/devices/battery.hpp"

namespace bankwright {

// Nominal voltage of one cell [common practice]: lead-acid 2.0, lifepo4 3.2, nmc 3.6 V.
Voltage nominal_cell_voltage(Chemistry);

// `voltage`, else `chemistry` and `cells`. Throws std::invalid_argument naming the missing key.
Voltage nominal_voltage(Battery const&);

// Cells in series: `cells`, else from `voltage` and `chemistry`. A lifepo4 label that names the class ("12 V", "36 V")
// stands for four cells per 12 V. Throws std::invalid_argument naming the missing key.
int cell_count(Battery const&);

// How many 12 V lead-acid batteries it stands in for: cranking current and bands of 12 V labels scale with this.
// A 12.8 V lifepo4 and a 14.8 V nmc battery count 1, a 6 V lead-acid one 0.5.
double twelve_volt_classes(Battery const&);

// Do batteries in series whose nominal voltages add up to `sum` make a system of the `system` voltage? Lead-acid labels
// are exact (1 %); lithium cells do not divide 12 V, and 12.8 V counts as 12 V (8 %) [common practice].
bool fits_system(Voltage sum, bool lithium, Voltage system);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/battery_nominal_inl.hpp"
#endif
