// Which findings concern which part? Numbered as they are listed, with a word for each.
#pragma once

#include "bankwright/drawing/draw_options.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright::drawing {

struct Mark {
    Level level = Level::note;
    std::vector<int> numbers; // from 1, of its level and all others that it has

    // "error 1", "error 1, 3"
    std::string words() const;
};

struct Marks {
    std::vector<Finding const*> listed; // number n is listed[n - 1]
    std::map<std::string, Mark, std::less<>> by_part;

    Mark const* of(std::string_view id) const;
};

Marks marks_of(Findings const& findings);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/symbols/marks_inl.hpp"
#endif
