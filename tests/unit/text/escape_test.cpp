#include "bankwright/text/escape.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("printable text passes unchanged") {
    std::string const text = "feed: 12 in, 4.2 m\u03A9, \u96FB, \"q\" \\ `b`";
    CHECK(terminal_safe(text) == text);
}

TEST_CASE("controls cannot move the cursor, color the terminal or end the line") {
    CHECK(terminal_safe("\x1b[2J") == "\\x1b[2J");
    CHECK(terminal_safe("a\tb\nc\rd") == "a\\tb\\nc\\rd");
    CHECK(terminal_safe(std::string_view("\0\a\x7f", 3)) == "\\x00\\x07\\x7f");
    CHECK(terminal_safe("\u009B"
                        "31m") == "\\u{9b}31m");      // C1: a control sequence in one character
    CHECK(terminal_safe("\x9b\xff") == "\\x9b\\xff"); // stray bytes
}

TEST_CASE("text cannot be turned around or hidden") {
    CHECK(terminal_safe("\u202Eabc\u2066\u200F\u061C") == "\\u{202e}abc\\u{2066}\\u{200f}\\u{61c}");
    CHECK(terminal_safe("A\u200BB\uFEFF\u2028") == "A\\u{200b}B\\u{feff}\\u{2028}");
    CHECK(terminal_safe("\U000E0041") == "\\u{e0041}");
}

TEST_CASE("no byte below a blank and no DEL leaves, whatever comes in") {
    int unsafe = 0;
    for (int first = 0; first < 256; ++first)
        for (int second = 0; second < 256; ++second)
            for (char const c : terminal_safe(std::string{static_cast<char>(first), static_cast<char>(second)}))
                if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) ++unsafe;
    CHECK(unsafe == 0);
}

TEST_CASE("what has a meaning in XML and HTML loses it") {
    CHECK(xml_escape("<a href=\"x\">&'") == "&lt;a href=&quot;x&quot;&gt;&amp;&#39;");
    CHECK(xml_escape("a\n\tb") == "a\n\tb");
    CHECK(xml_escape("\x1b \xff \uFFFE") == "\\x1b \\xff \\u{fffe}"); // no character of XML 1.0
    CHECK(xml_escape("]]>") == "]]&gt;");
    CHECK(xml_escape("4 m\u03A9") == "4 m\u03A9");
}
