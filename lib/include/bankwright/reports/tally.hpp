// How many of what, in words: "1 error", "1 error, 2 warnings, 1 accepted", "nothing wrong", "nothing else wrong, 1
// accepted", "nothing wrong by the rules chosen; left out: load, wiring/loose-end; they find 1 error".
#pragma once

#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/left_out_rules.hpp"

#include <string>
#include <string_view>

namespace bankwright {

inline std::string counted(int number, std::string_view noun) {
    return std::to_string(number) + " " + std::string(noun) + (number == 1 ? "" : "s");
}

// Zero counts are left out; empty where all are zero.
inline std::string listed(FindingCounts const& counts) {
    std::string out;
    auto const add = [&](int number, std::string_view noun) {
        if (number != 0) out += (out.empty() ? "" : ", ") + counted(number, noun);
    };
    add(counts.error, "error");
    add(counts.warning, "warning");
    add(counts.note, "note");
    return out;
}

inline std::string nothing_wrong(int accepted, bool all_rules) {
    return std::string("nothing ") + (accepted != 0 ? "else " : "") + "wrong" +
           (all_rules ? "" : " by the rules chosen");
}

inline std::string tally(FindingCounts const& counts, int accepted = 0, bool all_rules = true) {
    auto out = listed(counts);
    if (out.empty()) out = nothing_wrong(accepted, all_rules);
    if (accepted != 0) out += ", " + std::to_string(accepted) + " accepted";
    return out;
}

// "left out: wiring, load/runtime; they find 1 error"; empty where no rule is left out.
inline std::string told(LeftOutRules const& rules) {
    std::string out;
    for (auto const& name : rules.names)
        out += (out.empty() ? "left out: " : ", ") + name;
    auto const found = listed(rules.found);
    return found.empty() ? out : out + "; " + (rules.names.size() == 1 ? "it finds " : "they find ") + found;
}

} // namespace bankwright
