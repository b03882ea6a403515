// `bankwright rules [ID]`: what is looked for, why, and where does the number come from?
#pragma once

#include "outcome.hpp"

#include <string>

struct RulesRequest {
    std::string id; // of one rule, or a family; empty: all
    Format format = Format::text;
};

Outcome run(RulesRequest const& request, bool colour);
