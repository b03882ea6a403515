// What voltage may a charger hold across so many cells of a chemistry, and how does a charge proceed?
// Sources: data/tables/chemistries.toml, charge voltages, mostly common practice.
#pragma once

#include "bankwright/devices/charger.hpp"
#include "bankwright/devices/chemistry.hpp"
#include "bankwright/tables/source.hpp"
#include "bankwright/units/temperature.hpp"

namespace bankwright {

// The stages of a charge at 25 degC: constant current up to absorption, held there while the current falls, then float.
struct ChargeStages {
    Voltage absorption_low;
    Voltage absorption_high;
    Voltage float_low; // lithium is not floated: the usual holding voltage
    Voltage float_high;
};
ChargeStages charge_stages(Chemistry, int cells);

// The lowest float and the highest absorption voltage: outside these a charger undercharges or ruins the cells. A
// charger keeps its setting within 1 % [common practice], so a rule should forgive no more than that.
struct ChargeRange {
    Voltage low;
    Voltage high;
    Source source;
};
ChargeRange charge_range(Chemistry, int cells);

// By how much the cells want another voltage than at 25 degC: -4 mV a kelvin and cell for lead-acid (-3 to -5 is common
// practice, 3 was read), nothing for lithium.
Voltage temperature_compensation(Chemistry, int cells, Temperature);

// What an output holds while the batteries are so warm: `voltage`, and for each lead-acid cell that so much is made for
// its own `compensation`. Chargers are made for three cells and multiples of them. Throws std::invalid_argument without
// `voltage`.
Voltage held_voltage(Charger const&, Temperature of_the_batteries);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/charger_limits_inl.hpp"
#endif
