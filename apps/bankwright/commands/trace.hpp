// trace FILE READINGS: what is wrong with a bank that reads otherwise than it was drawn?
#pragma once

#include "outcome.hpp"

#include <string>

struct TraceRequest {
    std::string file;
    std::string readings;
    Format format = Format::text;
};

Outcome run(TraceRequest const& request, bool colour);
