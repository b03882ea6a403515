// How warm does a conductor get, and what short circuit does it survive?
#pragma once

#include "bankwright/devices/conductor.hpp"

#include <optional>

namespace bankwright {

// Steady temperature of the copper at a current: the rise goes as its square and reaches the insulation's rating at the
// published ampacity in 30 degC [derived from what an ampacity is]. In an engine space the surroundings are at least
// 50 degC. Empty where there is no ampacity.
std::optional<Temperature> conductor_temperature(Conductor const&, Current, Temperature ambient);

// Of the copper at work: its `temperature` where that is stated, else as above, but not above what its insulation
// bears, where ampacity is what is wrong; the surroundings where there is no ampacity.
Temperature copper_temperature(Conductor const&, Current, Temperature ambient);

// What a conductor loses at work, its two joints included. Throws as resistance() does.
Voltage conductor_drop(Conductor const&, Current, Temperature ambient, Resistance joint);

// k of I2t = k2 S2 for copper heated without loss: 226 sqrt(ln(1 + (final - initial) / (234.5 degC + initial))), in
// A s^0.5 / mm2 (IEC 60364-5-54, quoted: reprints). For no more than 5 s.
double short_circuit_k(Temperature initial, Temperature final);

// The temperature that the insulation bears for 5 s. The file names a rating and no material: up to 90 degC it is taken
// for thermoplastic (160 degC, as IEC 60364-5-54 has it of PVC of 70 and 90 degC; quoted: reprints), and at 105 degC
// too, which the standard does not print [derived, the safe side]; up to 150 degC for cross-linked (250 degC), above
// for silicone (350 degC).
Temperature short_circuit_limit(Temperature insulation);

// I2t that the conductor bears, starting as hot as its insulation allows (60 degC unless stated). Empty without a size.
std::optional<LetThrough> withstand(Conductor const&);

// How long it bears a short-circuit current. Only up to 5 s does the formula hold; longer times are on the safe side.
std::optional<Duration> withstand_time(Conductor const&, Current);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/conductor_heating_inl.hpp"
#endif
