// What resistance has a wire with its two ends?
//
// Annealed copper of 100 % IACS: 1/58 ohm mm2/m at 20 degC, 0.00393 per kelvin (IEC 60028; from memory, the figures
// that IEC 60364 and IEC 60228 derive from them were read). Over the area that the size stands for: strands and lay add
// a few percent, conductors to SAE areas 3 to 12 %; tables/wire_resistance.hpp has the published maxima for comparison.
#pragma once

#include "bankwright/devices/conductor.hpp"
#include "bankwright/tables/source.hpp"

namespace bankwright {

inline constexpr double copper_resistivity = 1.0 / 58.0e6;        // [ohm m] at 20 degC
inline constexpr double copper_temperature_coefficient = 0.00393; // [1/K] of the value at 20 degC

// Of bare annealed copper wire.
ResistancePerLength copper_resistance(Area, Temperature);

// What tinning adds: the ratio of IEC 60228 class 5 tinned to plain at the nearest size (1.02 to 1.03).
double tinned_ratio(Area);

// `resistance` as given; else wire (size, length, tinned, temperature) plus two joints, the conductor's own or `joint`.
// Throws std::invalid_argument naming the missing key.
Resistance resistance(Conductor const&, Temperature ambient, Resistance joint);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/conductor_resistance_inl.hpp"
#endif
