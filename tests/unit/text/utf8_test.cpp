#include "bankwright/text/utf8.hpp"

#include <string>
#include <string_view>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

// The bytes of a character, by the table of RFC 3629, section 3 (from memory).
void append_utf8(std::string& text, char32_t point) {
    auto const add = [&](char32_t bits) { text += static_cast<char>(static_cast<unsigned char>(bits)); };
    if (point < 0x80) {
        add(point);
    } else if (point < 0x800) {
        add(0xC0 | (point >> 6));
        add(0x80 | (point & 0x3F));
    } else if (point < 0x10000) {
        add(0xE0 | (point >> 12));
        add(0x80 | ((point >> 6) & 0x3F));
        add(0x80 | (point & 0x3F));
    } else {
        add(0xF0 | (point >> 18));
        add(0x80 | ((point >> 12) & 0x3F));
        add(0x80 | ((point >> 6) & 0x3F));
        add(0x80 | (point & 0x3F));
    }
}

} // namespace

TEST_CASE("every code point that there is survives the way to bytes and back") {
    int wrong = 0;
    for (char32_t c = 0; c <= 0x10FFFF; ++c) {
        if (c >= 0xD800 && c <= 0xDFFF) continue;
        std::string bytes;
        append_utf8(bytes, c);
        auto const back = first_code_point(bytes);
        if (!back.valid || back.value != c || back.length != bytes.size()) ++wrong;
    }
    CHECK(wrong == 0);
}

TEST_CASE("what is no UTF-8 is told by the place of its first byte") {
    CHECK(is_utf8("12.8 V, 4 m\u03A9, \U0001F50B"));
    CHECK(is_utf8(""));
    CHECK(first_invalid_utf8("ab\xFF") == 2);
    CHECK(first_invalid_utf8("\x80") == 0);             // a continuation alone
    CHECK(first_invalid_utf8("a\xC3") == 1);            // cut off
    CHECK(first_invalid_utf8("a\xE2\x84") == 1);        // cut off
    CHECK(first_invalid_utf8("\xC0\xAF") == 0);         // overlong '/'
    CHECK(first_invalid_utf8("\xE0\x80\xAF") == 0);     // overlong '/'
    CHECK(first_invalid_utf8("\xF0\x80\x80\xAF") == 0); // overlong '/'
    CHECK(first_invalid_utf8("\xED\xA0\x80") == 0);     // a surrogate
    CHECK(first_invalid_utf8("\xF4\x90\x80\x80") == 0); // above U+10FFFF
    CHECK(first_invalid_utf8("\xF5\x80\x80\x80") == 0);
    CHECK(first_invalid_utf8(std::string_view("a\0b", 3)) == std::nullopt);
}

TEST_CASE("each stray byte is a character by itself") {
    int characters = 0;
    for_each_code_point("m\u03A9\xFF\xFE", [&](CodePoint, std::string_view) { ++characters; });
    CHECK(characters == 4);
}

TEST_CASE("combining marks take no room and wide characters two columns") {
    CHECK(display_width("abc") == 3);
    CHECK(display_width("e\u0301") == 1);
    CHECK(display_width("\u96FB\u6C60") == 4);
    CHECK(display_width("\U0001F50B") == 2);
    CHECK(display_width("\u03A9\u00B2\u00B5") == 3);
}
