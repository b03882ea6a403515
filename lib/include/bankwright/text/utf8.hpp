// UTF-8: which characters are in this text, is it valid, how wide does it show?
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace bankwright {

struct CodePoint {
    char32_t value = 0;     // for an invalid byte: the byte itself
    std::size_t length = 1; // bytes that it takes
    bool valid = false;
};

// The character at the front of `text`, which must not be empty. Overlong forms, surrogates and values above U+10FFFF
// are invalid; an invalid sequence is taken one byte at a time. Source: RFC 3629, section 4 (from memory).
constexpr CodePoint first_code_point(std::string_view text) {
    auto const byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    unsigned char const lead = byte(0);
    CodePoint const invalid{lead, 1, false};
    if (lead < 0x80) return {lead, 1, true};
    std::size_t const length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || text.size() < length) return invalid;
    char32_t value = lead & (0xFFu >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xC0) != 0x80) return invalid;
        value = (value << 6) | (byte(i) & 0x3Fu);
    }
    bool const overlong = (length == 3 && value < 0x800) || (length == 4 && value < 0x10000);
    if (overlong || (value >= 0xD800 && value <= 0xDFFF) || value > 0x10FFFF) return invalid;
    return {value, length, true};
}

// Calls visit(CodePoint, bytes) for each character.
template <class Visit>
constexpr void for_each_code_point(std::string_view text, Visit visit) {
    while (!text.empty()) {
        auto const point = first_code_point(text);
        visit(point, text.substr(0, point.length));
        text.remove_prefix(point.length);
    }
}

// Byte offset of the first invalid sequence; none in valid UTF-8.
constexpr std::optional<std::size_t> first_invalid_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        auto const point = first_code_point(text.substr(at));
        if (!point.valid) return at;
        at += point.length;
    }
    return std::nullopt;
}

constexpr bool is_utf8(std::string_view text) { return !first_invalid_utf8(text); }

// Columns that a printable character takes on a terminal: 0 for combining marks, 2 for East Asian wide ones and most
// emoji, else 1. The main blocks only: best effort, since no two terminals agree.
constexpr int display_width(char32_t c) {
    auto const in = [c](char32_t from, char32_t to) { return c >= from && c <= to; };
    if (in(0x0300, 0x036F) || in(0x0483, 0x0489) || in(0x0591, 0x05BD) || in(0x064B, 0x065F) || in(0x1AB0, 0x1AFF) ||
        in(0x1DC0, 0x1DFF) || in(0x200B, 0x200D) || in(0x20D0, 0x20FF) || in(0xFE00, 0xFE0F) || in(0xFE20, 0xFE2F))
        return 0;
    if (in(0x1100, 0x115F) || in(0x2E80, 0x303E) || in(0x3041, 0xA4CF) || in(0xA960, 0xA97F) || in(0xAC00, 0xD7A3) ||
        in(0xF900, 0xFAFF) || in(0xFE30, 0xFE6F) || in(0xFF00, 0xFF60) || in(0xFFE0, 0xFFE6) || in(0x1F300, 0x1F64F) ||
        in(0x1F680, 0x1F6FF) || in(0x1F900, 0x1F9FF) || in(0x20000, 0x3FFFD))
        return 2;
    return 1;
}

constexpr int display_width(std::string_view text) {
    int width = 0;
    for_each_code_point(text, [&](CodePoint point, std::string_view) { width += display_width(point.value); });
    return width;
}

} // namespace bankwright
