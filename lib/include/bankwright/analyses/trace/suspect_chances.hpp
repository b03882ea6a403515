// How likely is a fault before anything is read? And which moments count as one.
#pragma once

#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/bank/part_kind.hpp"
#include "bankwright/bank/reading_sheet.hpp"
#include "bankwright/network/moment.hpp"

#include <cstddef>
#include <optional>

namespace bankwright {

namespace internal::suspecting {

// How often, against each other [common practice, no source; only their order of magnitude matters]: what has tripped,
// blown or come out; what has corroded, the wet places first; a flat, worn or dead battery; then what a hand did wrong:
// two leads exchanged, a battery turned, a conductor left off. An end can be on a great many wrong terminals, each of
// them seldom.
inline double chance(FaultChange const& change, PartKind part, bool is_wet) {
    bool const is_load = part == PartKind::motor || part == PartKind::load;
    switch (change.kind) {
    case FaultKind::open:
        return is_load ? 0.3 : part != PartKind::connector || change.elements > 1 ? 2.0 : 1.0;
    case FaultKind::resistive:
        return is_wet ? 1.5 : 1.0;
    case FaultKind::missing: // left off, broken, or a crimp that has corroded through
        return is_wet ? 1.0 : 0.8;
    case FaultKind::low:
        return 1.0;
    case FaultKind::dead_cell:
    case FaultKind::shorted_cell:
    case FaultKind::dead:
    case FaultKind::stalled:
        return 0.3;
    case FaultKind::exchanged:
    case FaultKind::reversed:
        return 0.7;
    case FaultKind::moved:
        return 0.1;
    }
    return 0.1;
}

inline bool is_of_a_hand(FaultKind kind) {
    return kind == FaultKind::reversed || kind == FaultKind::exchanged || kind == FaultKind::moved;
}

// What has run was wired right: wear, corrosion and trips are left. Of what somebody has been at nothing is sure.
inline double chance_since(std::optional<Since> since, FaultKind kind) {
    if (since == Since::it_ran) return is_of_a_hand(kind) ? 1e-3 : 1.0;
    if (since == Since::work_on_the_bank) return is_of_a_hand(kind) ? 3.0 : kind == FaultKind::missing ? 3.0 : 1.0;
    return 1.0;
}

inline constexpr double chance_as_described = 5.0; // who traces has seen something
inline constexpr double chance_of_second = 0.01;   // of one fault more, against without it

inline constexpr std::size_t most_kept_bytes = 64u << 20;

inline bool same(Moment const& a, Moment const& b) {
    return a.loads == b.loads && a.everything_closed == b.everything_closed && a.chargers == b.chargers &&
           a.combined == b.combined && a.starters == b.starters && a.shore == b.shore &&
           (a.converters == b.converters || a.loads == LoadsAre::at_rest) &&
           (a.loads != LoadsAre::constant_current || a.current == b.current) &&
           a.throttle.has_value() == b.throttle.has_value() &&
           (!a.throttle || a.throttle->value() == b.throttle->value());
}

// At rest a converter is off, too: it is a load to the bank that feeds it.
inline Moment as_looked_at(Moment moment) {
    if (moment.loads == LoadsAre::at_rest) moment.converters = false;
    return moment;
}

inline Moment at_rest() {
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    return moment;
}

} // namespace internal::suspecting

} // namespace bankwright
