// How soon does a breaker or fuse open, and how much heat does it let through before?
//
// Where a standard says so, named by `class`, or the maker, by `trips` of its own; a device without either, or of
// another class, has no curve. A band is a few points; between them nothing is drawn in but what must be true of a
// device that opens sooner the larger the current: at least as late as the next point above, at latest as the next
// point below.
#pragma once

#include "bankwright/devices/protection.hpp"
#include "bankwright/tables/source.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace bankwright {

// Breakers, then fuses. Of ISO 8820-3 the letter is the body: c medium, e high current (large), f miniature; without
// one, the body in which the rating is usually sold. SAE J553: 1 resets itself, 2 holds while fed, 3 is reset by hand.
enum class TripClass {
    ul_489,
    iec_60898_b,
    iec_60898_c,
    iec_60898_d,
    iec_60934,
    sae_j553_1,
    sae_j553_2,
    sae_j553_3,
    iso_8820_3,
    iso_8820_3_c,
    iso_8820_3_e,
    iso_8820_3_f,
    iso_8820_4,
    iso_8820_5,
    iso_8820_6,
    ul_248_14,
    ul_248_15,
    iec_60127_sheet_1,
    iec_60127_sheet_2,
    iec_60127_sheet_3,
    iec_60127_sheet_5,
    sae_j554,
};

inline constexpr std::array<std::string_view, 22> trip_class_names{"ul-489",
                                                                   "iec-60898-b",
                                                                   "iec-60898-c",
                                                                   "iec-60898-d",
                                                                   "iec-60934",
                                                                   "sae-j553-1",
                                                                   "sae-j553-2",
                                                                   "sae-j553-3",
                                                                   "iso-8820-3",
                                                                   "iso-8820-3-c",
                                                                   "iso-8820-3-e",
                                                                   "iso-8820-3-f",
                                                                   "iso-8820-4",
                                                                   "iso-8820-5",
                                                                   "iso-8820-6",
                                                                   "ul-248-14",
                                                                   "ul-248-15",
                                                                   "iec-60127-sheet-1",
                                                                   "iec-60127-sheet-2",
                                                                   "iec-60127-sheet-3",
                                                                   "iec-60127-sheet-5",
                                                                   "sae-j554"};

constexpr std::string_view name(TripClass trip_class) { return trip_class_names[static_cast<std::size_t>(trip_class)]; }
std::optional<TripClass> trip_class_named(std::string_view); // as above; capitals, spaces and '_' for '-' are read too

struct TripBand {
    Duration at_least; // it holds that long; infinite: it does not open
    Duration at_most;  // it has opened by then; infinite: the standard promises nothing
    Source source;     // its confidence is that of the point behind at_most, if there is one
};

// Is there a band to be had: `trips`, or a known class?
bool has_trip_band(ProtectiveDevice const&);

// Its own `trips`, else those of its class. Empty without either, or without a rating.
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
