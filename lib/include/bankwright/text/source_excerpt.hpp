// The line of a text that a complaint is about, with carets under the place: one spot turns columns into display width.
#pragma once

#include "bankwright/linkage.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace bankwright {

struct SourceExcerpt {
    std::string line;   // safe for a terminal; tabs as blanks; windowed where long
    std::string carets; // blanks, then ^~~~ as wide as the place
};

// Lines and columns count from 1, columns in code points, a tab is one; the end is exclusive. A place of several lines
// is marked to the end of its first. None where the text has no such line.
std::optional<SourceExcerpt> source_excerpt(std::string_view text, int line, int column, int end_line, int end_column,
                                            int most_columns = 120);

// The same for anything with begin and end that have line and column, such as findings' Region.
template <class Region>
std::optional<SourceExcerpt> source_excerpt(std::string_view text, Region const& region, int most_columns = 120) {
    return source_excerpt(text, region.begin.line, region.begin.column, region.end.line, region.end.column,
                          most_columns);
}

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/text/source_excerpt_inl.hpp"
#endif
