// What somebody read on a bank: the meter, the moment, and the readings, as they were written down.
#pragma once

#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// What the loads did meanwhile: nothing, unless one of these is said.
struct ReadingState {
    std::optional<bool> rest;
    std::optional<Throttle> throttle; // of every motor, and every load as described
    std::optional<Current> current;   // through the motor (or the one load)
};

struct VoltageEntry {
    std::string red; // terminal under the red lead
    std::string black;
    Voltage reads{};
    ReadingState state;
};
struct CurrentEntry {
    std::string part; // sign: that of the part, as everywhere
    Current reads{};
    ReadingState state;
};

// How far a clamp may be off, one-sided; the default is common practice, no source.
struct ClampAccuracy {
    double of_reading = 0.02;
    int counts = 5;
    Current digit = 0.1 * si::ampere;
};

// What happened since all was well; it changes what is likely.
enum class Since {
    it_ran,           // nothing but use: nothing is miswired
    work_on_the_bank, // somebody has been at it
};

struct ReadingSheet {
    MeterAccuracy meter;
    ClampAccuracy clamp;
    bool has_clamp = false; // one is at hand: currents may be asked for
    std::optional<Since> since;
    std::vector<VoltageEntry> volts;
    std::vector<CurrentEntry> amps;
};

} // namespace bankwright
