// What resistance has a wire with its two ends?
//
// Annealed copper of 100 % IACS: 1/58 ohm mm2/m at 20 degC, 0.00393 per kelvin (IEC 60028; recalled, the figures that
// IEC 60364 and IEC 60228 derive from them are quoted by reprints). Over the area that the size stands for; an SAE size
// has its own. Its strands lie in a helix and are 2 % longer than the conductor (ASTM B8, B174, B496).
// tables/wire_resistance.hpp has the published maxima for comparison.
#pragma once

#include "bankwright/devices/conductor.hpp"
#include "bankwright/tables/source.hpp"

#include <optional>

namespace bankwright {

inline constexpr double copper_resistivity = 1.0 / 58.0e6;        // [ohm m] at 20 degC
inline constexpr double copper_temperature_coefficient = 0.00393; // [1/K] of the value at 20 degC

// Of bare annealed copper wire.
ResistancePerLength copper_resistance(Area, Temperature);

// What tinning adds: the ratio of IEC 60228 class 5 tinned to plain at the nearest size (1.02 to 1.03).
double tinned_ratio(Area);

// Of a stranded conductor: 2 % above the bare wire's, for the lay of its strands.
ResistancePerLength stranded_resistance(Area, Temperature);

// Of the wire alone, without its joints: stranded, and tinned where it is so. Empty without size or length, or where
// `resistance` is given.
std::optional<Resistance> wire_resistance(Conductor const&, Temperature copper);

// `resistance` as given; else wire (size, length, tinned, temperature) plus two joints, the conductor's own or `joint`.
// Throws std::invalid_argument naming the missing key.
Resistance resistance(Conductor const&, Temperature ambient, Resistance joint);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/conductor_resistance_inl.hpp"
#endif
