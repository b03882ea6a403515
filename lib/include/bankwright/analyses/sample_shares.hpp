// What do a bank's possible forms come to: in how many does a rule fire, and how long do they run?
#pragma once

#include "bankwright/findings/level.hpp"
#include "bankwright/units/quantities.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct RuleShare {
    std::string rule;
    Level level = Level::note; // the worst seen
    std::size_t samples = 0;   // in which it fired
    bool as_stated = false;    // it fires on the bank as the file says, too
    std::string part;          // the one named first, most often
};

struct RunTimes {
    Duration as_stated{};
    Duration mean{};
    Duration least{};
    Duration most{};
    std::vector<std::string> ended_by; // every battery, motor or load that ended a draw's run, the most frequent first
};

struct SampleShares {
    std::size_t samples = 0;
    std::vector<RuleShare> rules;     // errors and warnings, the most frequent first
    std::optional<RunTimes> run_time; // none where the bank cannot be run down
};

} // namespace bankwright
