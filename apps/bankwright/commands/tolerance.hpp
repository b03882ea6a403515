// `bankwright tolerance FILE`: how far do the answers spread, how bad can it get, what matters, which rules are set
// off?
#pragma once

#include "bankwright/analyses/tolerance.hpp"
#include "outcome.hpp"

#include <cstddef>
#include <string>

struct ToleranceRequest {
    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::ToleranceOptions options;
    std::size_t checked = 200; // draws on which every rule is tried
};

Outcome run(ToleranceRequest const& request, bool colour);
