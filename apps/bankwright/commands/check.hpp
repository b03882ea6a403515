// `bankwright check FILE...`: what is wrong with these banks?
#pragma once

#include "outcome.hpp"

#include "bankwright/findings/level.hpp"
#include "bankwright/rules/run.hpp"

#include <string>
#include <vector>

struct CheckRequest {
    std::vector<std::string> files; // "-": standard input
    Format format = Format::text;
    bankwright::Level fail_on = bankwright::Level::error;
    bool all = false;               // consequences and accepted findings too
    bankwright::CheckOptions rules; // which are looked for; file/* always are
};

Outcome run(CheckRequest const& request, bool colour);
