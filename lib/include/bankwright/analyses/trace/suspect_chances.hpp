// How likely is a fault before anything is read? And which moments count as one.
#pragma once

#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/network/moment.hpp"

#include <cstddef>

namespace bankwright {

namespace internal::suspecting {

// How often, against each other [from memory: what a rigger meets; only their order of magnitude matters]. An end can
// be on a great many wrong terminals, each of them seldom.
inline double chance(FaultKind kind) {
    switch (kind) {
    case FaultKind::resistive:
    case FaultKind::low:
    case FaultKind::reversed:
        return 1.0;
    case FaultKind::missing:
    case FaultKind::open:
        return 0.5;
    case FaultKind::dead:
    case FaultKind::dead_cell:
    case FaultKind::shorted_cell:
        return 0.3;
    case FaultKind::moved:
        return 0.1;
    }
    return 0.1;
}
inline constexpr double chance_as_described = 5.0; // who traces has seen something
inline constexpr double chance_of_second = 0.01;   // of one fault more, against without it

inline constexpr std::size_t most_kept_bytes = 128u << 20;

inline bool same(Moment const& a, Moment const& b) {
    return a.loads == b.loads && a.everything_closed == b.everything_closed && a.chargers == b.chargers &&
           (a.loads != LoadsAre::constant_current || a.current == b.current) &&
           a.throttle.has_value() == b.throttle.has_value() &&
           (!a.throttle || a.throttle->value() == b.throttle->value());
}

inline Moment at_rest() {
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    return moment;
}

} // namespace internal::suspecting

} // namespace bankwright
