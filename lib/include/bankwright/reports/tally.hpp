// How many of what, in words: "1 error", "1 error, 2 warnings, 1 accepted", "nothing wrong".
#pragma once

#include "bankwright/findings/finding.hpp"

#include <string>
#include <string_view>

namespace bankwright {

inline std::string counted(int number, std::string_view noun) {
    return std::to_string(number) + " " + std::string(noun) + (number == 1 ? "" : "s");
}

// Zero counts are left out.
inline std::string tally(FindingCounts const& counts, int accepted = 0) {
    std::string out;
    auto const add = [&](int number, std::string const& text) {
        if (number != 0) out += (out.empty() ? "" : ", ") + text;
    };
    add(counts.error, counted(counts.error, "error"));
    add(counts.warning, counted(counts.warning, "warning"));
    add(counts.note, counted(counts.note, "note"));
    if (out.empty()) out = "nothing wrong";
    add(accepted, std::to_string(accepted) + " accepted");
    return out;
}

} // namespace bankwright
