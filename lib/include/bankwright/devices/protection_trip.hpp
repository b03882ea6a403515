// How soon does a breaker or fuse open, and how much heat does it let through before?
//
// Only where a standard says so: `class` names it, and a device without one, or of another class, has no curve. A
// standard prints a few points; between them nothing is drawn in but what must be true of a device that opens sooner
// the larger the current: at least as late as the next point above, at latest as the next point below.
#pragma once

#include "bankwright/devices/protection.hpp"
#include "bankwright/tables/source.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace bankwright {

enum class TripClass { ul_489, iec_60898_b, iec_60898_c, iec_60898_d, iso_8820_3, iso_8820_5, sae_j554 };

inline constexpr std::array<std::string_view, 7> trip_class_names{
    "ul-489", "iec-60898-b", "iec-60898-c", "iec-60898-d", "iso-8820-3", "iso-8820-5", "sae-j554"};

constexpr std::string_view name(TripClass trip_class) { return trip_class_names[static_cast<std::size_t>(trip_class)]; }
std::optional<TripClass> trip_class_named(std::string_view); // as above; capitals, spaces and '_' for '-' are read too

struct TripBand {
    Duration at_least; // it holds that long; infinite: it does not open
    Duration at_most;  // it has opened by then; infinite: the standard promises nothing
    Source source;     // its confidence is that of the point behind at_most, if there is one
};

// Empty without a known class or a rating.
std::optional<TripBand> trip_band(ProtectiveDevice const&, Current);

// Upper bound of I2t for a prospective current, where the class has an instantaneous region (its last point opens
// within 1 s) and the current reaches it; empty elsewhere: the standard's thermal points say nothing of a short
// circuit.
struct LetThroughBound {
    LetThrough at_most;
    Source source;
};
std::optional<LetThroughBound> let_through(ProtectiveDevice const&, Current prospective);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/protection_trip_inl.hpp"
#endif
