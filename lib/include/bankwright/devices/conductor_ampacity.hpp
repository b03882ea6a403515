// How much current may a conductor carry for good?
//
// 33 CFR 183.425 Table 5 (30 degC), times the share for engine spaces (its note 1, 50 degC) and for bundling (UL 1426,
// at every voltage, as ABYC has it). What the table leaves open is decided on the safe side:
//   a size in mm2, or between gauges    the largest gauge that is not larger
//   an insulation rating between columns the column below
//   an insulation nobody states          the 60 degC column; the result says so
//   surroundings above 30 degC           sqrt((Tins - T) / (Tins - 30 degC)), the law behind note 1: it gives the
//                                        published shares to within 1.5 % for 60 to 125 degC insulation
// Colder surroundings earn nothing. A conductor's own `temperature` is its copper's, and does not count here.
#pragma once

#include "bankwright/devices/conductor.hpp"
#include "bankwright/tables/source.hpp"

#include <optional>

namespace bankwright {

// What the published ampacities stand on, 33 CFR 183.425.
namespace internal::published_ampacity {
inline constexpr double basis_celsius = 30.0;        // Table 5
inline constexpr double engine_space_celsius = 50.0; // note 1
} // namespace internal::published_ampacity

struct Ampacity {
    Current current;        // with every factor applied
    Current published;      // the table's cell
    Awg gauge;              // the table's row
    Temperature insulation; // the table's column
    bool insulation_assumed = false;
    double surroundings = 1.0; // share left by engine space or warm surroundings
    double bundling = 1.0;     // share left by bundling
    Source source;
};

// Empty without a size, below 18 AWG, or for an insulation rated below 60 degC.
std::optional<Ampacity> ampacity(Conductor const&, Temperature ambient);

// Table 5 itself: amperes for a row and a column, if there are such.
std::optional<Current> table_5(Awg, Temperature insulation);

double bundling_share(int conductors);             // 1 for one or two
double engine_space_share(Temperature insulation); // note 1, of the column at or below; 0 below 60 degC

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/conductor_ampacity_inl.hpp"
#endif
