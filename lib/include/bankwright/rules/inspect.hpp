// The text of one bank file, read and checked as far as it goes: what it describes, and all that is wrong with it.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/source_map.hpp"
#include "bankwright/config/part_list.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/findings/verdict.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/rules/check.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

// All that is known of one file. Its verdict holds the findings of the reader and of every rule, located and in order.
struct Inspection : Verdict {
    Bank bank{}; // as far as it could be read
    SourceMap map{};
    std::vector<std::string> left_out{}; // parts missing from the bank: only shorts and matching were checked
    bool readable = false;               // it is a bank file, however wrong
    bool as_written = false;             // it is one, and all of it could be understood: it may be solved
};

// What the file itself gets wrong is always found, whichever rules are chosen. The file's name is left to the caller.
// Throws std::invalid_argument for a chosen word that is neither a rule nor a family of rules.
Inspection inspect(std::string_view text, CheckOptions const& rules = {}, ReadLimits const& limits = {},
                   PartListSource const& part_lists = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/inspect_inl.hpp"
#endif
