// `bankwright hookup FILE`: in which order is it put together, and what must the meter read at each step?
#pragma once

#include "outcome.hpp"

#include "bankwright/analyses/hookup.hpp"

#include <string>

struct HookupRequest {
    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::HookupOptions options;
};

Outcome run(HookupRequest const& request, bool colour);
