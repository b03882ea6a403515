// How large may a breaker or fuse be, and what must it interrupt?
#pragma once

#include "bankwright/devices/protection.hpp"
#include "bankwright/tables/source.hpp"

#include <optional>

namespace bankwright {

// The smallest standard rating that is not below a current; empty above the largest (1000 A).
std::optional<Current> next_standard_size(Current);

// The largest rating that may protect a conductor of this ampacity.
struct RatingLimit {
    Current rating;
    Source source;
};
RatingLimit abyc_rating_limit(Current ampacity);                // ampacity, or the next standard size if within 150 %
RatingLimit cfr_rating_limit(Current ampacity, Voltage system); // below 50 V any rating up to 150 %, else as ABYC

// What a breaker must interrupt where only the cranking amperes of all connected batteries are known. The table covers
// 12, 24 and 32 V; above that the 32 V rows are the least one can ask, and `source` says so.
struct InterruptingNeed {
    Current current;
    Source source;
};
enum class BreakerPlace { main, branch }; // main: the first in series with the battery
InterruptingNeed interrupting_need(Current total_cranking, Voltage system, BreakerPlace);

// How far along the conductor from its source a device may sit.
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
