// From the text of a duty file to the trip it plans.
#pragma once

#include "bankwright/bank/duty.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"

#include <string_view>

namespace bankwright {

struct DutyResult {
    Duty duty;            // as far as it could be read
    Findings findings;    // of the family file/*, in the order of the text
    bool readable = true; // false: there is no duty at all
};

// Never throws for what the text holds. A duty without a leg is a finding.
DutyResult read_duty(std::string_view text, ReadLimits const& limits = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/read_duty_inl.hpp"
#endif
