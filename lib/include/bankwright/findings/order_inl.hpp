// Bodies of order.hpp.
#pragma once

#include "bankwright/findings/order.hpp"

#include <algorithm>
#include <string_view>
#include <tuple>

namespace bankwright {

BANKWRIGHT_INLINE void order(Findings& findings) {
    auto const rank = [](Finding const& f) {
        auto const begin = f.region ? f.region->begin : Position{};
        return std::tuple(f.accepted, -static_cast<int>(f.level), std::string_view(f.file), begin.line, begin.column);
    };
    std::stable_sort(findings.begin(), findings.end(),
                     [&](Finding const& a, Finding const& b) { return rank(a) < rank(b); });
}

} // namespace bankwright
