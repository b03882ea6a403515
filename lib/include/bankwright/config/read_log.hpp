// From the text of the log of a hook-up to its entries, against the bank that was hooked up.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/hookup_log.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"

#include <string_view>
#include <vector>

namespace bankwright {

struct LogResult {
    HookupLog log;               // as far as it could be read
    std::vector<Region> regions; // of its entries
    Findings findings;           // of the family file/*, in the order of the text
    bool readable = true;        // false: there is no log at all
};

// Never throws for what the text holds. Every terminal and part that it names is checked against the bank.
LogResult read_log(std::string_view text, Bank const& bank, ReadLimits const& limits = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/read_log_inl.hpp"
#endif
