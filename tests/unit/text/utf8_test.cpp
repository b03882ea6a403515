#include "bankwright/text/utf8.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

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

TEST_CASE("characters are counted, not bytes, and each stray byte is one") {
    CHECK(count_code_points("m\u03A9") == 2);
    CHECK(count_code_points("\xFF\xFE") == 2);
    CHECK(count_code_points("") == 0);
}

TEST_CASE("combining marks take no room and wide characters two columns") {
    CHECK(display_width("abc") == 3);
    CHECK(display_width("e\u0301") == 1);
    CHECK(display_width("\u96FB\u6C60") == 4);
    CHECK(display_width("\U0001F50B") == 2);
    CHECK(display_width("\u03A9\u00B2\u00B5") == 3);
}
