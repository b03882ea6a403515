// What flows into a short circuit anywhere in the bank, what ends it and how soon, can the devices break it, and does
// the copper live through it?
//
// Bolted shorts, one at a time, every device closed, every load and charger off. Steady direct currents from the
// batteries' own resistance: what inductance holds back in the first milliseconds is not counted, nor is a lithium
// battery's own disconnect.
#pragma once

#include "bankwright/analyses/short_circuit/device_duty.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/devices/protection_trip.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct ShortCircuitOptions {
    Voltage least_voltage = 0.5 * si::volt; // between points closer than this a short is none
};

// A breaker or fuse that carries current into a short.
struct FaultDevice {
    std::string id;
    Current through{};
    std::optional<TripBand> band;   // none: its time-current curve is not known
    std::optional<bool> interrupts; // can it break that? none: it does not say what it can
};

// A short between a terminal and another: the - of the same plug, motor, load or charger output, else the negative end
// of the bank that feeds it.
struct ShortPlace {
    std::string terminal;
    std::string against;
    Voltage voltage{}; // between them before
    Current prospective{};
    std::vector<FaultDevice> devices;       // that carry current into it; breakers, then fuses
    std::vector<std::string> cleared_by;    // those of them that end it, if it is sure that they do
    std::optional<Duration> cleared_within; // by then; none: nothing is sure to end it
    bool bypassed = false;                  // at last nothing but what passes no breaker or fuse is left, and flows on
};

// A conductor in one short.
struct ConductorInShort {
    std::string at;                 // the place's terminal
    Current current{};              // the largest while it lasts
    std::optional<LetThrough> heat; // I2t at most, until a device has ended it there; none: none is sure to
    std::optional<bool> survives;   // none: not sure; what a standard says of overloads leaves much room in a short
    std::optional<Duration> bears;  // how long the conductor bears the current; on the safe side above 5 s
};

struct ConductorDuty {
    std::string id;
    std::optional<LetThrough> withstand;     // none: its size is not stated
    std::optional<ConductorInShort> ended;   // the hottest of the shorts that a device is sure to end there
    std::optional<ConductorInShort> unended; // the largest of those that none is sure to
};

struct ShortCircuitResult {
    std::vector<ShortPlace> places;        // where a device, load or conductor's end is; in the author's order
    std::vector<DeviceDuty> devices;       // breakers, then fuses
    std::vector<ConductorDuty> conductors; // jumpers, then cables
};

// Throws std::invalid_argument where build() does.
ShortCircuitResult short_circuit(Bank const& bank, ShortCircuitOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/short_circuit_inl.hpp"
#endif
