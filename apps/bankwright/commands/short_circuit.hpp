// `bankwright short-circuit FILE`: what flows into a short anywhere, what ends it, and does the copper live through it?
#pragma once

#include "outcome.hpp"

#include <string>

struct ShortCircuitRequest {
    std::string file; // "-": standard input
    Format format = Format::text;
};

Outcome run(ShortCircuitRequest const& request, bool colour);
