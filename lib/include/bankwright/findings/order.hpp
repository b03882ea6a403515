// In which order does a person want to read findings? The worst first, within a level as they stand in the file.
#pragma once

#include "bankwright/findings/finding.hpp"

#include <algorithm>
#include <string_view>
#include <tuple>

namespace bankwright {

// Accepted ones go last, those without a place in the file go first in their level; otherwise equal ones keep their
// order.
inline void order(Findings& findings) {
    auto const rank = [](Finding const& f) {
        auto const begin = f.region ? f.region->begin : Position{};
        return std::tuple(f.accepted, -static_cast<int>(f.level), std::string_view(f.file), begin.line, begin.column);
    };
    std::stable_sort(findings.begin(), findings.end(),
                     [&](Finding const& a, Finding const& b) { return rank(a) < rank(b); });
}

} // namespace bankwright
