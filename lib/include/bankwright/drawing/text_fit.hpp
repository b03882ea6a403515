// How wide will a text be, and how is it shortened to fit? The font is not known when the drawing is made: widths are
// those of a wide sans-serif face, and whatever a browser has in its place is hardly wider.
#pragma once

#include "bankwright/text/escape.hpp"
#include "bankwright/text/utf8.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright::drawing {

// In em, bold.
constexpr double advance(char32_t c) {
    constexpr std::string_view narrow = "ijlI.,:;'|! ";
    constexpr std::string_view slim = "()[]ftr-/\\\"{}_`";
    constexpr std::string_view plain = "0123456789abcdeghknopqsuvxyz*$?";
    constexpr std::string_view broad = "OQGHNDU&#~+=<>";
    constexpr std::string_view wide = "mwMW%@";
    constexpr std::u32string_view small = U"\u00b0\u00b2\u00b7"; // degree, square, middle dot
    if (c < 0x80) {
        auto const is = [c](std::string_view set) { return set.find(static_cast<char>(c)) != std::string_view::npos; };
        return is(narrow) ? 0.39 : is(slim) ? 0.5 : is(plain) ? 0.72 : is(broad) ? 0.88 : is(wide) ? 1.11 : 0.78;
    }
    if (small.find(c) != std::u32string_view::npos) return 0.5;
    auto const columns = display_width(c);
    return columns == 0 ? 0.0 : columns == 1 ? 1.1 : 1.3;
}

inline double text_width(std::string_view text, double size, bool bold = false) {
    double ems = 0.0;
    for_each_code_point(text, [&](CodePoint point, std::string_view) { ems += advance(point.value); });
    return ems * size * (bold ? 1.0 : 0.94);
}

// What a person may be shown of a foreign text: nothing invisible, nothing that turns its direction; with an ellipsis
// where it is too wide.
inline std::string fitted(std::string_view text, double width, double size, bool bold = false) {
    constexpr std::string_view ellipsis = "\u2026";
    width += 0.01; // a text as wide as it was measured fits
    auto const room = width - text_width(ellipsis, size, bold);
    std::string kept, shown;
    double used = 0.0;
    bool whole = true;
    for_each_code_point(text, [&](CodePoint point, std::string_view bytes) {
        if (!whole) return;
        auto const safe = terminal_safe(point, bytes);
        used += text_width(safe, size, bold);
        shown += safe;
        if (used <= room) kept = shown;
        whole = used <= width;
    });
    return whole ? shown : kept + std::string(ellipsis);
}

// Lines no wider than that, broken at blanks; a word that is too wide alone is shortened.
inline std::vector<std::string> wrapped(std::string_view text, double width, double size, bool bold = false) {
    std::vector<std::string> lines;
    std::string line;
    auto const safe = terminal_safe(text);
    for (std::size_t at = 0; at < safe.size();) {
        auto const blank = std::min(safe.find(' ', at), safe.size());
        auto const word = fitted(std::string_view(safe).substr(at, blank - at), width, size, bold);
        auto longer = line;
        if (!line.empty()) longer += ' ';
        longer += word;
        if (!line.empty() && text_width(longer, size, bold) > width) {
            lines.push_back(line);
            line = word;
        } else {
            line = longer;
        }
        at = blank + 1;
    }
    if (!line.empty()) lines.push_back(line);
    return lines;
}

} // namespace bankwright::drawing
