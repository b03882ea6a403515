// What a renderer of a tolerance study is given: one file's spread of answers and the rules that it sets off.
#pragma once

#include "bankwright/analyses/sample_shares.hpp"
#include "bankwright/analyses/tolerance.hpp"
#include "bankwright/reports/report_head.hpp"

namespace bankwright {

struct Toleranced : ReportHead {
    ToleranceOptions options;
    ToleranceResult result;
    SampleShares shares; // of the samples on which every rule was tried, if any
};

} // namespace bankwright
