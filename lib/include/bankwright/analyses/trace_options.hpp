// How good is the meter, how well are the parts known, and when is a trace content?
#pragma once

#include "bankwright/analyses/trace/expected_readings.hpp"
#include "bankwright/bank/reading_sheet.hpp"
#include "bankwright/devices/battery_voltage.hpp"

#include <cstddef>
#include <optional>

namespace bankwright {

struct TraceOptions {
    MeterAccuracy meter;
    ClampAccuracy clamp;
    PartSpread spread;
    bool clamp_at_hand = false;  // currents may be asked for
    std::optional<Since> since;  // what happened since all was well; none: not known
    double explained = 3.0;      // misfit above which pairs of faults are tried [standard deviations]
    double told_apart = 3.0;     // a difference in one reading that tells two faults apart [standard deviations]
    double certain = 0.998;      // probability at which no further reading is asked for
    std::size_t pair_seeds = 64; // single faults that pairs are built from
};

} // namespace bankwright
