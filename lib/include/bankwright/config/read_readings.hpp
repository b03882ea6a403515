// From the text of a file of readings to the readings, against the bank they were taken on.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/reading_sheet.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"

#include <string_view>

namespace bankwright {

struct ReadingsResult {
    ReadingSheet sheet;   // as far as it could be read
    Findings findings;    // of the family file/*, in the order of the text
    bool readable = true; // false: there is no sheet at all
};

// Never throws for what the text holds. Every terminal and part that it names is checked against the bank.
ReadingsResult read_readings(std::string_view text, Bank const& bank, ReadLimits const& limits = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/read_readings_inl.hpp"
#endif
