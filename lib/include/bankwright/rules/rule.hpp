// A family of rules: what each says about itself, and the one function that looks for all of them.
#pragma once

#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/rule_info.hpp"
#include "bankwright/rules/seen.hpp"

#include <cmath>
#include <span>
#include <string>
#include <string_view>
#include <utility>

namespace bankwright {

struct RuleFamily {
    std::string_view name;
    std::span<RuleInfo const> rules;
    void (*check)(Seen const&, Findings&); // nullptr: somebody else looks for them (reading does, for file/*)
};

// A finding of this rule at its usual level.
inline Finding finding_of(RuleInfo const& rule, std::string message, std::string help) {
    Finding finding;
    finding.rule = std::string(rule.id);
    finding.level = rule.level;
    finding.message = std::move(message);
    finding.help = std::move(help);
    return finding;
}

// found and allowed with their unit.
inline Finding& measured(Finding& finding, double found, double allowed, std::string unit) {
    finding.found = found;
    finding.allowed = allowed;
    finding.unit = std::move(unit);
    return finding;
}

// Beyond a limit. What reaches it, but for the last digits of the arithmetic, is not beyond it.
inline bool exceeds(double found, double limit) { return found > limit + 1e-9 * std::abs(limit); }
template <class Quantity>
bool exceeds(Quantity const& found, Quantity const& limit) {
    return exceeds(found.value(), limit.value());
}

} // namespace bankwright
