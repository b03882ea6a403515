// `bankwright hookup FILE`: in which order is it put together, and what must the meter read at each step?
#pragma once

#include "bankwright/analyses/hookup.hpp"
#include "outcome.hpp"

#include <string>

struct HookupRequest {
    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::HookupOptions options;
};

Outcome run(HookupRequest const& request, bool colour);
