// Which conductor sizes and ratings can one buy?
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <optional>
#include <vector>

namespace bankwright {

enum class SizeSystem { awg, metric };

// From the thinnest. Gauges are the even ones from 18 AWG and 1/0 to 4/0, what shops stock (common practice, no
// source): 33 CFR 183.425 Table 5 but 3 and 1 AWG; sections those of IEC 60228, 0.75 to 240 mm2.
std::vector<WireSize> standard_wire_sizes(SizeSystem system);

// Those of the system's own `stock` that are of this kind, from the thinnest; the standard ones where it has none.
std::vector<WireSize> stocked_sizes(System const& system, SizeSystem kind);

// The thinnest standard size of the other kind that holds at least as much copper; empty where there is none.
std::optional<WireSize> at_least_as_good(WireSize size);

// Of breakers and fuses, from the smallest: 1 to 1000 A (tables/protection.hpp, standard_sizes).
std::vector<Current> standard_ratings();

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/sizing/standard_sizes_inl.hpp"
#endif
