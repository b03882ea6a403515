// What a rule says about itself. `check`, `rules`, SARIF and the documentation all print this text.
#pragma once

#include "bankwright/findings/level.hpp"

#include <array>
#include <cstddef>
#include <string_view>

namespace bankwright {

struct RuleInfo {
    std::string_view id;     // family/name: says the fault; never renamed, never reused
    Level level;             // as it is usually reported
    std::string_view since;  // version that brought it
    std::string_view what;   // what it looks for
    std::string_view why;    // why it matters
    std::string_view fix;    // what to do
    std::string_view source; // document and clause with how sure it is, or "common practice, no single source"
};

// The rule of that id; a name that is not in the list does not compile.
template <std::size_t N>
consteval RuleInfo rule_named(std::array<RuleInfo, N> const& rules, std::string_view id) {
    for (auto const& rule : rules)
        if (rule.id == id) return rule;
    throw "no rule of this id";
}

} // namespace bankwright
