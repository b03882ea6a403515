// Everything that is wrong with a bank.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/left_out_rules.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct CheckOptions {
    std::vector<std::string> only; // rule ids or families ("wiring"); empty: all
    std::vector<std::string> skip;
    bool whole = true;          // false: parts of the bank are missing, and no repair of its wiring can be told
    bool count_left_out = true; // false: a family of which nothing is wanted is not even run, and finds nothing
};

struct CheckResult {
    Findings findings;                      // worst first, in the catalog's order within a level
    std::optional<std::string> arrangement; // "3S1P", or nothing
    LeftOutRules left_out;                  // by the options
};

// Findings carry no regions: a bank may not come from a file. locate() adds them where it does. Throws
// std::invalid_argument for a chosen word that is neither a rule nor a family of rules: a check that looks for nothing
// would find nothing wrong.
CheckResult check(Bank const& bank, CheckOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/check_inl.hpp"
#endif
