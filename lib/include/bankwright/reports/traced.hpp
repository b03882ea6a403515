// What a renderer of a trace is given.
#pragma once

#include "bankwright/analyses/trace.hpp"
#include "bankwright/bank/reading_sheet.hpp"
#include "bankwright/reports/report_head.hpp"

namespace bankwright {

struct Traced : ReportHead {
    ReadingSheet sheet;
    TraceResult result;
};

} // namespace bankwright
