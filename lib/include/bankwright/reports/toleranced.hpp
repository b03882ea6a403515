// What a renderer of a tolerance study is given: one file's spread of answers and the rules that it sets off.
#pragma once

#include "bankwright/analyses/tolerance.hpp"
#include "bankwright/findings/level.hpp"
#include "bankwright/units/quantities.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// A rule, and in how many of the draws it fired.
struct FiredRule {
    std::string rule;
    Level level = Level::note;
    std::size_t draws = 0;
    bool as_stated = false;
    std::string part;
};

struct RunTimeSpread {
    Duration as_stated{};
    Duration mean{};
    Duration least{};
    Duration most{};
    std::vector<std::string> ended_by;
};

struct Toleranced {
    std::string file;                       // as the user named it
    std::optional<std::string> arrangement; // "3S1P", none where the wiring is no such thing
    ToleranceOptions options;
    ToleranceResult result;
    std::size_t checked = 0; // draws on which every rule was tried
    std::vector<FiredRule> rules;
    std::optional<RunTimeSpread> run_time;
};

} // namespace bankwright
