// What current does a battery take at a charger's voltage as it fills, and how much of it is stored?
//
// Lead-acid follows the ampere-hour law: it takes, without gassing, no more amperes than ampere-hours are missing
// (Woodbridge 1935; quoted: a trade page, which gives as its consequence that 90 % is
// restored in two to three hours). A full one still takes a little, as gas. Lithium holds its current until about 95 %
// is in at C/2, and then falls the same way with a tenth of the time constant [from memory].
#pragma once

#include "bankwright/devices/battery.hpp"
#include "bankwright/linkage.hpp"

namespace bankwright {

// How far the time of a charge may lie to either side of what follows, for what batteries of one chemistry differ in
// [a choice: it ran 15 to 20 % short of two logged charges before the table was fitted to them].
inline constexpr Spread usual_charging_spread = Spread::percent(10);

// At the voltage of the table, which is the lowest that the chemistry's absorption is done at for lead-acid, moved by
// temperature_compensation(). A cold battery takes as much less as its resistance is higher [derived from cranking
// power, read; that cold slows a charge is common practice]. Throws std::invalid_argument naming the missing key.
Current acceptance(Battery const&, StateOfCharge, Temperature ambient);

// The same as a resistance behind the open-circuit voltage, and never less than the internal one.
Resistance charging_resistance(Battery const&, StateOfCharge, Temperature ambient);

// Of a charging current, what becomes charge before the coulombic efficiency: less the nearer to full.
double share_stored(Battery const&, StateOfCharge, Temperature ambient);

// When this is all that a battery takes at the absorption voltage, it counts as full.
Current tail_current(Battery const&, Temperature ambient);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/battery_acceptance_inl.hpp"
#endif
