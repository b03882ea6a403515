// Which findings concern which part? Numbered as they are listed, with a word for each.
#pragma once

#include "bankwright/drawing/draw_options.hpp"
#include "bankwright/findings/finding.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright::drawing {

struct Mark {
    Level level = Level::note;
    std::vector<int> numbers; // from 1, of its level and all others that it has

    // "error 1", "error 1, 3"
    std::string words() const {
        auto text = std::string(name(level));
        for (std::size_t i = 0; i < numbers.size(); ++i)
            text += (i == 0 ? " " : ", ") + std::to_string(numbers[i]);
        return text;
    }
};

struct Marks {
    std::vector<Finding const*> listed; // number n is listed[n - 1]
    std::map<std::string, Mark, std::less<>> by_part;

    Mark const* of(std::string_view id) const {
        auto const found = by_part.find(id);
        return found == by_part.end() ? nullptr : &found->second;
    }
};

// A loop's finding names every part of the loop, and one of a turned battery what that does to the load; only the cause
// is marked.
inline bool marks_the_cause_alone(Finding const& finding) {
    return finding.rule == "wiring/short-loop" || finding.rule == "wiring/shorted-battery" ||
           finding.rule == "wiring/reversed-battery";
}

inline Marks marks_of(Findings const& findings) {
    Marks marks;
    for (auto const& finding : findings) {
        if (finding.accepted) continue;
        marks.listed.push_back(&finding);
        auto const number = static_cast<int>(marks.listed.size());
        for (std::size_t i = 0; i < finding.parts.size(); ++i) {
            if (i > 0 && marks_the_cause_alone(finding)) break;
            auto const [at, is_new] = marks.by_part.try_emplace(finding.parts[i], Mark{finding.level, {}});
            at->second.level = std::max(at->second.level, finding.level);
            if (at->second.numbers.empty() || at->second.numbers.back() != number) at->second.numbers.push_back(number);
        }
    }
    return marks;
}

} // namespace bankwright::drawing
