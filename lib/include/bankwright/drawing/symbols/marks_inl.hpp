// Bodies of marks.hpp.
#pragma once

#include "bankwright/drawing/symbols/marks.hpp"

#include <algorithm>
#include <cstddef>

namespace bankwright::drawing {

BANKWRIGHT_INLINE std::string Mark::words() const {
    auto text = std::string(name(level));
    for (std::size_t i = 0; i < numbers.size(); ++i)
        text += (i == 0 ? " " : ", ") + std::to_string(numbers[i]);
    return text;
}

BANKWRIGHT_INLINE Mark const* Marks::of(std::string_view id) const {
    auto const found = by_part.find(id);
    return found == by_part.end() ? nullptr : &found->second;
}

namespace internal {

// A loop's finding names every part of the loop, and one of a turned battery what that does to the load; only the cause
// is marked.
inline bool marks_the_cause_alone(Finding const& finding) {
    return finding.rule == "wiring/shorted-loop" || finding.rule == "wiring/shorted-battery" ||
           finding.rule == "wiring/reversed-battery";
}

} // namespace internal

BANKWRIGHT_INLINE Marks marks_of(Findings const& findings) {
    Marks marks;
    for (auto const& finding : findings) {
        if (finding.accepted) continue;
        marks.listed.push_back(&finding);
        auto const number = static_cast<int>(marks.listed.size());
        for (std::size_t i = 0; i < finding.parts.size(); ++i) {
            if (i > 0 && internal::marks_the_cause_alone(finding)) break;
            auto const [at, is_new] = marks.by_part.try_emplace(finding.parts[i], Mark{finding.level, {}});
            at->second.level = std::max(at->second.level, finding.level);
            if (at->second.numbers.empty() || at->second.numbers.back() != number) at->second.numbers.push_back(number);
        }
    }
    return marks;
}

} // namespace bankwright::drawing
