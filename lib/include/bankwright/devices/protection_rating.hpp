// How large may a breaker or fuse be, and what must it interrupt?
#pragma once

#include "bankwright/devices/protection.hpp"
#include "bankwright/devices/protection_trip.hpp"
#include "bankwright/tables/source.hpp"

#include <optional>

namespace bankwright {

// The smallest standard rating that is not below a current; empty above the largest (1000 A).
std::optional<Current> next_standard_size(Current);

// Molded-case breakers of UL 489 are calibrated at 100 % in free air and bear at most 80 % of their rating for hours:
// NEC (NFPA 70) 210.20(A), 125 % of a continuous load [from memory].
inline constexpr double continuous_share = 0.8;
inline bool bears_80_percent_for_hours(ProtectiveDevice const& device) {
    return device.trip_class && trip_class_named(*device.trip_class) == TripClass::ul_489;
}

// The largest rating that may protect a conductor of this ampacity.
struct RatingLimit {
    Current rating;
    Source source;
};
RatingLimit abyc_rating_limit(Current ampacity);                // ampacity, or the next standard size if within 150 %
RatingLimit cfr_rating_limit(Current ampacity, Voltage system); // (c)(1): below 50 V any up to 150 %; (c)(2): as ABYC

// What a breaker must interrupt at least by the cranking amperes of all connected batteries. The table covers 12, 24
// and 32 V; above that the 32 V rows are the least one can ask, and `source` says so.
struct InterruptingNeed {
    Current current;
    Source source;
};
enum class BreakerPlace { main, branch }; // main: the first in series with the battery
InterruptingNeed interrupting_need(Current total_cranking, Voltage system, BreakerPlace);

// ABYC E-11 of banks above 2200 cranking amperes or 500 Ah (quoted: an owners' forum): the battery
// maker's short-circuit current, added up over parallel strings; 20 kA where that exceeds 10 kA, and where it is not
// known. Empty of smaller banks.
std::optional<InterruptingNeed> large_bank_need(Current total_cranking, Charge capacity, std::optional<Current> makers);

// Above it ABYC E-11 of July 2025, 11.10.1.4.1, asks for a device at each battery of a parallel bank (quoted:
// an owners' forum).
Charge parallel_bank_limit();
Source parallel_bank_source();

// How far along the conductor from its source a device may sit, where it cannot practically sit at the source itself;
// the 40 in only where 7 in are not practical either (33 CFR 183.455(b)).
enum class Routing { open, enclosed, enclosed_from_battery };
struct DistanceLimit {
    Length distance;
    Source source;
};
DistanceLimit distance_limit(Routing);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/protection_rating_inl.hpp"
#endif
