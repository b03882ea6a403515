// The text of one bank file, read and checked as far as it goes: what it describes, and all that is wrong with it.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/source_map.hpp"
#include "bankwright/config/part_list.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/source_text.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/rules/check.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

struct Inspection {
    Bank bank; // as far as it could be read
    SourceMap map;
    Findings findings;                      // of the reader and of every rule, located and in order
    std::optional<std::string> arrangement; // "3S1P", none where the wiring is no such thing
    std::vector<std::string> left_out;      // parts missing from the bank: only shorts and matching were checked
    std::vector<SourceText> part_lists;     // those that findings point into
    bool readable = false;                  // it is a bank file, however wrong
    bool as_written = false;                // it is one, and all of it could be understood: it may be solved
};

// What the file itself gets wrong is always found, whichever rules are chosen.
Inspection inspect(std::string_view text, CheckOptions const& rules = {}, ReadLimits const& limits = {},
                   PartListSource const& part_lists = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/inspect_inl.hpp"
#endif
