// What a renderer of short circuits is given: one file's shorts.
#pragma once

#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/reports/report_head.hpp"

namespace bankwright {

struct ShortCircuited : ReportHead {
    ShortCircuitResult result;
};

} // namespace bankwright
