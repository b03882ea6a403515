// What a renderer of a solution is given: one file's operating point.
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/reports/report_head.hpp"

namespace bankwright {

struct Solved : ReportHead {
    OperatingPoint point;
    Findings findings; // why there is no operating point, where there is none
};

} // namespace bankwright
