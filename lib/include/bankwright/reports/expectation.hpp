// Is the `allowed` of a finding a limit, or what wiring that is right would give?
#pragma once

#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/rule_id.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace bankwright {

inline bool is_expectation(Finding const& finding) {
    constexpr std::array<std::string_view, 4> rules{"charging/polarity", "charging/not-isolated",
                                                    "matching/mixed-voltage", "load/runtime"};
    return family(finding.rule) == "wiring" || std::find(rules.begin(), rules.end(), finding.rule) != rules.end();
}

} // namespace bankwright
