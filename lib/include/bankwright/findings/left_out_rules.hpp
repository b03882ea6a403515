// Which rules did a caller choose to leave out, and what do these find all the same? A report that says "nothing wrong"
// says of what.
#pragma once

#include "bankwright/findings/finding.hpp"

#include <string>
#include <vector>

namespace bankwright {

struct LeftOutRules {
    std::vector<std::string> names{}; // rule ids, or families of which all rules are left out; empty: none
    FindingCounts found{};            // of these rules, not accepted, and not among the findings
};

} // namespace bankwright
