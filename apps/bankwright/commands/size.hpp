// `bankwright size FILE`: which conductors, breakers and number of strings are enough, why no less, and what to cut.
#pragma once

#include "bankwright/sizing/sizing.hpp"
#include "outcome.hpp"

#include <string>

struct SizeRequest {
    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::SizingOptions options;
};

Outcome run(SizeRequest const& request, bool colour);
