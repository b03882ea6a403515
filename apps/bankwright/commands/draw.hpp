// `bankwright draw FILE -o bank.svg`: how is it wired, as a picture with the readings and the findings on it?
#pragma once

#include "bankwright/network/moment.hpp"
#include "outcome.hpp"

#include <string>

struct DrawRequest {
    std::string file;   // "-": standard input
    std::string output; // empty: standard output
    bankwright::Moment moment;
};

Outcome run(DrawRequest const& request, bool colour);
