// Which conductor sizes and ratings can one buy?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <vector>

namespace bankwright {

enum class SizeSystem { awg, metric };

// From the thinnest. Gauges are those of 33 CFR 183.425 Table 5, 18 AWG to 4/0, but 3 AWG, which neither SAE nor the
// printed tables of voltage drop have, and few shops; sections those of IEC 60228, 0.75 to 240 mm2.
std::vector<WireSize> standard_wire_sizes(SizeSystem system);

// Of breakers and fuses, from the smallest: 1 to 1000 A (tables/protection.hpp, standard_sizes).
std::vector<Current> standard_ratings();

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/sizing/standard_sizes_inl.hpp"
#endif
