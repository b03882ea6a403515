// Foreign text made safe to show: on a terminal, in XML and in HTML.
#pragma once

#include "bankwright/text/utf8.hpp"

#include <string>
#include <string_view>

namespace bankwright {

// Controls (C0, DEL, C1), line separators, and what is invisible or turns the direction of text: none of them belongs
// on a terminal line, where they could hide or rewrite what a person reads.
constexpr bool is_unprintable(char32_t c) {
    auto const in = [c](char32_t from, char32_t to) { return c >= from && c <= to; };
    return c < 0x20 || in(0x7F, 0x9F) || c == 0xAD || c == 0x061C || c == 0x180E || in(0x200B, 0x200F) ||
           in(0x2028, 0x202E) || in(0x2060, 0x206F) || c == 0xFEFF || in(0xFFF9, 0xFFFB) || in(0xE0000, 0xE007F) ||
           (c & 0xFFFE) == 0xFFFE; // no characters at all
}

// One character as it may be shown: itself, or "\n", "\x1b", "\u{202e}"; a stray byte as "\xff".
inline std::string terminal_safe(CodePoint point, std::string_view bytes) {
    constexpr std::string_view hex = "0123456789abcdef";
    if (point.valid && !is_unprintable(point.value)) return std::string(bytes);
    if (point.value == '\t') return "\\t";
    if (point.value == '\n') return "\\n";
    if (point.value == '\r') return "\\r";
    std::string digits;
    for (char32_t rest = point.value; rest != 0 || digits.size() < 2; rest >>= 4)
        digits.insert(0, 1, hex[rest & 0xF]);
    return !point.valid || point.value < 0x80 ? "\\x" + digits : "\\u{" + digits + "}";
}

inline std::string terminal_safe(std::string_view text) {
    std::string safe;
    safe.reserve(text.size());
    for_each_code_point(text, [&](CodePoint point, std::string_view bytes) { safe += terminal_safe(point, bytes); });
    return safe;
}

// For element content and quoted attributes of XML 1.0 and HTML. What XML may not hold (controls, stray bytes) and what
// would turn or hide text is shown as terminal_safe() shows it; line ends and tabs stay in content.
inline std::string xml_escape(std::string_view text) {
    std::string escaped;
    escaped.reserve(text.size());
    for_each_code_point(text, [&](CodePoint point, std::string_view bytes) {
        switch (point.value) {
        case '&':
            escaped += "&amp;";
            return;
        case '<':
            escaped += "&lt;";
            return;
        case '>':
            escaped += "&gt;";
            return;
        case '"':
            escaped += "&quot;";
            return;
        case '\'':
            escaped += "&#39;";
            return;
        case '\n':
        case '\t':
            escaped += bytes;
            return;
        default:
            escaped += terminal_safe(point, bytes);
        }
    });
    return escaped;
}

} // namespace bankwright
