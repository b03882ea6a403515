// In how many of a bank's possible forms does each rule fire, and how far does its run time spread?
#pragma once

#include "bankwright/analyses/tolerance.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/findings/level.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct RuleShareOptions {
    Spreads spreads;
    std::size_t draws = 200; // each checked by every rule, and run down once
    std::uint64_t seed = 1;
    std::function<void(std::size_t)> on_draw; // called with the number of those done
};

struct RuleShare {
    std::string rule;
    Level level = Level::note; // the worst seen
    std::size_t draws = 0;     // in which it fired
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

struct RuleShares {
    std::size_t draws = 0;
    std::vector<RuleShare> rules;     // errors and warnings, the most frequent first
    std::optional<RunTimes> run_time; // none where the bank cannot be run down
};

// Accepted findings and notes are not counted.
RuleShares rule_shares(Bank const& bank, RuleShareOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/rule_shares_inl.hpp"
#endif
