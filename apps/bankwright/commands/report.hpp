// `bankwright report FILE -o report.html`: everything about one bank on one page, for a phone, a desk and a printer.
#pragma once

#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/network/moment.hpp"
#include "outcome.hpp"

#include <string>

struct ReportRequest {
    std::string file;   // "-": standard input
    std::string output; // empty: standard output
    bankwright::Moment moment;
    bankwright::HookupOptions hookup;
};

Outcome run(ReportRequest const& request, bool colour);
