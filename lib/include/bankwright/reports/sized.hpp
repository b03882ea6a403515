// What a renderer of a sizing is given: one file's bank sized in gauges or in square millimeters, and its cut list.
#pragma once

#include "bankwright/reports/report_head.hpp"
#include "bankwright/sizing/cut_list.hpp"
#include "bankwright/sizing/sizing.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>

namespace bankwright {

struct Sized : ReportHead { // its arrangement is that as sized
    SizingResult result;
    CutList cuts;
    SizeSystem system = SizeSystem::awg; // of its sizes
    std::optional<Duration> wanted;      // run time
    std::optional<Duration> reached;     // by the bank as sized; none where it cannot be run down

    SizingResult const& chosen() const { return result; }
};

} // namespace bankwright
