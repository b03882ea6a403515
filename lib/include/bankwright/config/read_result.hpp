// What reading a bank file gives: a bank as far as it goes, and all that is wrong with the text.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/source_map.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/source_text.hpp"

#include <string>
#include <vector>

namespace bankwright {

struct ReadResult {
    Bank bank;         // as far as it could be read: a key that cannot be read is as if it were not there
    Findings findings; // of the family file/*, in the order of their places in the text
    SourceMap map;
    bool readable =
        true; // false: a syntax error, too large, not UTF-8, another format version; there is no bank at all
    // Parts that are not in the bank as something is missing that they cannot do without; the conductors that are landed on
    // them are not in it either. A verdict on the wiring of such a bank would be about another bank.
    std::vector<std::string> left_out;
    std::vector<SourceText> part_lists; // those that findings point into
};

} // namespace bankwright
