// What a renderer of a tolerance study is given: one file's spread of answers and the rules that it sets off.
#pragma once

#include "bankwright/analyses/drawn_shares.hpp"
#include "bankwright/analyses/tolerance.hpp"

#include <optional>
#include <string>

namespace bankwright {

struct Toleranced {
    std::string file;                       // as the user named it
    std::optional<std::string> arrangement; // "3S1P", none where the wiring is no such thing
    ToleranceOptions options;
    ToleranceResult result;
    DrawnShares shares; // of the draws on which every rule was tried, if any
};

} // namespace bankwright
