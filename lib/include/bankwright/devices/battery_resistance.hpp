// What resistance stands between a battery's cells and its posts?
//
// In this order: `resistance` as given, whatever the temperature and charge; `cranking`: by its definition (SAE J537)
// the battery still holds 7.2 V per 12 V at -18 degC after 30 s, so (E - 7.2 V) / cranking is the most it can be there,
// and it is taken as that; else a typical cell of the chemistry and size, about as 1 / capacity. The last two then move
// with temperature and charge (data/tables/internal_resistance.toml; resistance_spread() says how well each is known).
#pragma once

#include "bankwright/devices/battery.hpp"
#include "bankwright/tables/source.hpp"
#include "bankwright/units/fractions.hpp"

namespace bankwright {

// Throws std::invalid_argument naming the missing key.
Resistance internal_resistance(Battery const&, Temperature ambient);

// The same at another state of charge than the battery's own.
Resistance internal_resistance(Battery const&, StateOfCharge, Temperature ambient);

// Where the value came from: the label, its cranking current, or its chemistry.
Source internal_resistance_source(Battery const&);

// How far the battery's own may lie to either side, over the value: what its label leaves open to each of its kind.
// `resistance` is taken to be measured to a fifth; the two others are only as good as their rule [common practice].
inline constexpr Spread stated_resistance_spread = Spread::percent(20);
Spread resistance_spread(Battery const&);

// Ratio to the resistance at 25 degC, and to that when full.
double resistance_ratio(Chemistry, Temperature);
double resistance_ratio(Chemistry, StateOfCharge);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/battery_resistance_inl.hpp"
#endif
