#pragma once

#include "bankwright/text/escape.hpp"
#include "bankwright/text/source_excerpt.hpp"
#include "bankwright/text/utf8.hpp"

#include <algorithm>
#include <cstdint>
#include <cstring>
#include <vector>

namespace bankwright {

namespace internal::excerpt {

inline constexpr int tab_stop = 4;

inline std::optional<std::string_view> line_of(std::string_view text, int line) {
    if (line < 1) return std::nullopt;
    for (int i = 1; i < line; ++i) {
        auto const end = text.find('\n');
        if (end == std::string_view::npos) return std::nullopt;
        text.remove_prefix(end + 1);
    }
    text = text.substr(0, text.find('\n'));
    if (!text.empty() && text.back() == '\r') text.remove_suffix(1);
    return text;
}

struct Cell { // one character of the source as it will be shown
    std::string shown;
    int width = 0;
};

inline std::vector<Cell> cells_of(std::string_view line) {
    std::vector<Cell> cells;
    int width = 0;
    for_each_code_point(line, [&](CodePoint point, std::string_view bytes) {
        Cell cell;
        if (point.value == '\t') {
            cell.width = tab_stop - width % tab_stop;
            cell.shown.assign(static_cast<std::size_t>(cell.width), ' ');
        } else {
            cell.shown = terminal_safe(point, bytes);
            cell.width = display_width(cell.shown);
        }
        width += cell.width;
        cells.push_back(std::move(cell));
    });
    return cells;
}

// Where so many characters end; the whole text if it has fewer.
inline std::size_t bytes_of(std::string_view text, std::size_t characters) {
    std::size_t at = 0;
    while (characters > 0 && at < text.size()) {
        std::uint64_t eight = 0;
        if (characters >= sizeof eight && text.size() - at >= sizeof eight) {
            std::memcpy(&eight, text.data() + at, sizeof eight);
            if ((eight & 0x8080808080808080u) == 0) { // ASCII, as almost all of it is
                at += sizeof eight;
                characters -= sizeof eight;
                continue;
            }
        }
        at += first_code_point(text.substr(at)).length;
        --characters;
    }
    return at;
}

inline int width_of(std::vector<Cell> const& cells, std::size_t from, std::size_t to) {
    int width = 0;
    for (std::size_t i = from; i < to; ++i)
        width += cells[i].width;
    return width;
}

} // namespace internal::excerpt

BANKWRIGHT_INLINE std::optional<SourceExcerpt> source_excerpt(std::string_view text, int line, int column, int end_line,
                                                              int end_column, int most_columns) {
    auto source = internal::excerpt::line_of(text, line);
    if (!source) return std::nullopt;
    // Of a line without end, with findings without end on it, only what is near the place is looked at.
    int const reach = 4 * most_columns;
    int const left_out = std::max(column - 1 - reach, 0);
    source->remove_prefix(internal::excerpt::bytes_of(*source, static_cast<std::size_t>(left_out)));
    auto const kept = internal::excerpt::bytes_of(*source, 2 * static_cast<std::size_t>(reach));
    bool const goes_on = kept < source->size();
    auto const cells = internal::excerpt::cells_of(source->substr(0, kept));
    column -= left_out;
    end_column -= left_out;
    auto const place = [&](int c) { return std::min(cells.size(), static_cast<std::size_t>(std::max(c, 1) - 1)); };
    std::size_t const begin = place(column);
    std::size_t const end = end_line > line ? cells.size() : std::max(begin, place(end_column));

    // A window around the place: from its beginning outwards, a third of the room before it.
    constexpr std::string_view cut = "...";
    std::size_t from = 0, to = cells.size();
    if (internal::excerpt::width_of(cells, 0, cells.size()) > most_columns) {
        int const room = std::max(most_columns - 2 * static_cast<int>(cut.size()), 1);
        int width = 0;
        from = to = begin;
        while (from > 0 && width + cells[from - 1].width <= room / 3)
            width += cells[--from].width;
        while (to < cells.size() && width + cells[to].width <= room)
            width += cells[to++].width;
        while (from > 0 && width + cells[from - 1].width <= room)
            width += cells[--from].width;
    }
    SourceExcerpt result;
    if (from > 0 || left_out > 0) result.line += cut;
    result.carets.append(result.line.size() + static_cast<std::size_t>(internal::excerpt::width_of(cells, from, begin)),
                         ' ');
    for (std::size_t i = from; i < to; ++i)
        result.line += cells[i].shown;
    if (to < cells.size() || goes_on) result.line += cut;
    result.carets += '^';
    int const marked = internal::excerpt::width_of(cells, begin, std::min(end, to));
    if (marked > 1) result.carets.append(static_cast<std::size_t>(marked - 1), '~');
    return result;
}

} // namespace bankwright
