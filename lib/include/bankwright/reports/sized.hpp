// What a renderer of a sizing is given: one file's bank sized in gauges and in square millimeters, and its cut list.
#pragma once

#include "bankwright/reports/report_head.hpp"
#include "bankwright/sizing/cut_list.hpp"
#include "bankwright/sizing/sizing.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>

namespace bankwright {

struct Sized : ReportHead {              // its arrangement is that as sized
    SizingResult gauges;                 // the bank in AWG
    SizingResult sections;               // the same in mm2
    CutList cuts;                        // of the one that was asked for
    SizeSystem system = SizeSystem::awg; // which that is
    std::optional<Duration> wanted;      // run time
    std::optional<Duration> reached;     // by the bank as sized; none where it cannot be run down

    SizingResult const& chosen() const { return system == SizeSystem::awg ? gauges : sections; }
    SizingResult const& alternative() const { return system == SizeSystem::awg ? sections : gauges; }
};

} // namespace bankwright
