// What does a battery at rest show across its posts, and what does a reading there say of its charge?
//
// Open-circuit voltage by chemistry over charge and temperature, from data/tables/open_circuit_voltage.toml:
// flooded and gel as published by temperature (monotone cubic between the charges); agm, of which only one temperature
// is known, moves with temperature as flooded does; lithium per cell, straight between the published points, the same
// at every temperature (no usable published figure; the effect is a few mV a cell). The last half percent of the
// lifepo4 table is left out: it is the end of a charge, not rest. A full cell at rest is therefore 3.418 V, 13.67 V for
// four; the usual figure is 13.4 to 13.6 V [common practice].
#pragma once

#include "bankwright/devices/battery.hpp"

#include <vector>

namespace bankwright {

// Of one cell at rest. The charge is clamped to 0..1, the temperature to what the table covers.
//
// Below 0 a lead-acid cell's charge is the level at hand of battery_recovery.hpp while a current flows: the acid in the
// plates is spent, and the voltage goes by the hyperbola of Shepherd (J. Electrochem. Soc. 112 (1965) 657 [recalled],
// C X / (D - X) in the voltage of the kinetic battery model) to 1.75 V, where its rating ends (SAE J537), at
// -deep_charge. D, the sharpness of its bend, is a choice: a tenth before the end a cell has lost about a fifth of a
// volt less than at the end, as discharge curves at the 20-hour rate show [from memory].
Voltage open_circuit_cell_voltage(Chemistry, StateOfCharge, Temperature);

// The charges between which a cell's curve is one polynomial, of the third degree at most: 0, ..., 1; before them, for
// lead-acid, those from -deep_charge between which one of the fourth degree is as good as the hyperbola (1e-6 V).
std::vector<double> open_circuit_knots(Chemistry);

// `emf` if given, else chemistry, charge (full unless said), temperature, cells; a dead cell gives none, a weak one
// what battery_weak_cell.hpp says. Throws std::invalid_argument naming the missing key.
Voltage open_circuit_voltage(Battery const&, Temperature ambient);

// The same at another state of charge than the battery's own; ignores `emf`.
Voltage open_circuit_voltage(Battery const&, StateOfCharge, Temperature ambient);

inline constexpr double weak_cell_collapse = 0.01; // of its own charge

// Of one weak cell (battery_weak_cell.hpp) when the sound ones stand at this charge: its own charge's until the last
// hundredth, over which it goes to nothing. That it collapses is common practice; the hundredth is a choice, for want
// of a published course. Throws std::invalid_argument naming the missing key.
Voltage weak_cell_open_circuit_voltage(Battery const&, StateOfCharge of_the_sound, Temperature ambient);

// How far a meter may be off: a share of the reading, plus counts of its last digit.
struct MeterAccuracy {
    double of_reading = 0.005; // 0.5 %, the usual 3 1/2 digit handheld on DC volts
    int counts = 2;
    Voltage digit = 0.01 * si::volt; // one count: 10 mV on a 20 V range
};
Voltage meter_error(MeterAccuracy const&, Voltage reading); // one-sided

// The state of charge that a rested battery's reading stands for, and what the meter's accuracy leaves open.
// Inverse of open_circuit_voltage, clamped to 0..100 %.
struct ChargeEstimate {
    StateOfCharge low;
    StateOfCharge best;
    StateOfCharge high;
};
ChargeEstimate charge_from_voltage(Battery const&, Voltage rested, Temperature ambient, MeterAccuracy const& = {});

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/battery_voltage_inl.hpp"
#endif
