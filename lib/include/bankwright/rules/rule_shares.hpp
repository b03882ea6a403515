// In how many of a bank's possible forms does each rule fire, and how far does its run time spread?
#pragma once

#include "bankwright/analyses/sample_shares.hpp"
#include "bankwright/analyses/tolerance.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>

namespace bankwright {

struct RuleShareOptions {
    Spreads spreads;
    std::size_t samples = 200; // each checked by every rule, and run down once
    std::uint64_t seed = 1;
    std::function<void(std::size_t)> on_draw; // called with the number of those done
};

// As many samples as is usual, 200; fewer of a bank of very many parts, or motors: about a second's work.
std::size_t usual_checks(Bank const& bank);

// Accepted findings and notes are not counted. Throws std::invalid_argument for a spread or number of samples out of
// its range (network/option_limits.hpp), and as check() does.
SampleShares rule_shares(Bank const& bank, RuleShareOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/rule_shares_inl.hpp"
#endif
