// At which moment is the bank looked at: what the loads do, what is closed, whether the chargers give.
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>

namespace bankwright {

enum class LoadsAre {
    as_described,     // each motor and load as the bank describes it
    at_rest,          // every motor and load open
    constant_current, // every motor draws Moment::current and loads are open; where there is no motor, every load draws
                      // it
};

struct Moment {
    LoadsAre loads = LoadsAre::as_described;
    Current current{};                // with constant_current: what one motor (or load) draws
    std::optional<Throttle> throttle; // of every motor, instead of its own
    bool everything_closed = false; // switches, breakers and fuses closed, connectors mated, whatever their state says
    bool combined = true;           // everything_closed also turns selectors to both and closes relays
    bool starters = true;           // false: loads whose role is to start an engine are open
    bool shore = true;              // false: what is plugged in ashore gives nothing; alternator and solar panels do
    bool converters = true;         // false: they are off
    bool chargers = true; // false: a connected charger gives nothing, as one does that states no voltage or current
};

// Batteries and copper: every load and charger off, the rest as the bank describes it.
inline Moment bank_alone() {
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    moment.chargers = false;
    return moment;
}

// Every motor runs, and none at full.
constexpr bool is_part(Moment const& moment) {
    return moment.throttle && moment.throttle->value() > 0.0 && moment.throttle->value() < 1.0;
}

} // namespace bankwright
