// `bankwright solve FILE`: what are the voltages and currents at the operating point?
#pragma once

#include "bankwright/network/moment.hpp"
#include "outcome.hpp"

#include <string>

struct SolveRequest {
    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::Moment moment;
};

Outcome run(SolveRequest const& request, bool colour);
