// From the text of a bank file to a bank: everything that is wrong with the file is found at once, and never thrown.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/source_map.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

struct ReadResult {
    Bank bank;         // as far as it could be read: a key that cannot be read is as if it were not there
    Findings findings; // of the family file/*, in the order of their places in the text
    SourceMap map;
    bool readable =
        true; // false: a syntax error, too large, not UTF-8, another format version; there is no bank at all
    // Parts that are not in the bank for want of something they cannot do without. Conductors may still name their
    // terminals; a verdict on the wiring of such a bank would be about another bank.
    std::vector<std::string> left_out;
};

// Reads one bank file. Lines and columns are 1-based, columns count code points, a byte order mark is passed over.
ReadResult read(std::string_view text, ReadLimits const& limits = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/read_inl.hpp"
#endif
