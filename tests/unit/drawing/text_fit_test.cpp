#include "bankwright/drawing/text_fit.hpp"

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::drawing;

TEST_CASE("a text that fits is left alone") {
    CHECK(fitted("main", 100.0, 10.0) == "main");
    CHECK(fitted("main", text_width("main", 10.0), 10.0) == "main");
    CHECK(fitted("", 0.0, 10.0).empty());
}

TEST_CASE("a text that does not fit ends in an ellipsis and fits") {
    auto const shown = fitted(std::string(10000, 'w'), 80.0, 10.0);
    CHECK(shown.size() > 4);
    CHECK(shown.substr(shown.size() - 3) == "\u2026");
    CHECK(text_width(shown, 10.0) <= 80.1);
}

TEST_CASE("a character is not cut in two") {
    CHECK(fitted("\u03a9\u03a9\u03a9\u03a9\u03a9\u03a9", 40.0, 10.0) == "\u03a9\u03a9\u2026");
}

TEST_CASE("what hides or turns text is shown for what it is") {
    CHECK(fitted("a\u202eb", 200.0, 10.0) == "a\\u{202e}b");
    CHECK(fitted("\x01", 200.0, 10.0) == "\\x01");
}

TEST_CASE("text is wrapped at blanks, and a word too wide for a line is shortened") {
    CHECK(wrapped("one two three", text_width("one two", 10.0), 10.0) == std::vector<std::string>{"one two", "three"});
    auto const lines = wrapped("a " + std::string(500, 'x') + " b", 100.0, 10.0);
    REQUIRE(lines.size() == 3);
    CHECK(text_width(lines[1], 10.0) <= 100.1);
}
