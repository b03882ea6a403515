#include "bankwright/findings/position.hpp"
#include "bankwright/text/source_excerpt.hpp"
#include "bankwright/text/utf8.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("the carets stand under the place") {
    auto const excerpt = source_excerpt("a = 1\nfeed = { size = \"6 AWG\" }\nb = 2\n", Region{{2, 10}, {2, 24}});
    REQUIRE(excerpt);
    CHECK(excerpt->line == "feed = { size = \"6 AWG\" }");
    CHECK(excerpt->carets == "         ^~~~~~~~~~~~~~");
}

TEST_CASE("tabs, wide and combining characters keep the carets in place") {
    auto excerpt = source_excerpt("\tB = 1", 1, 2, 1, 3);
    CHECK(excerpt->line == "    B = 1");
    CHECK(excerpt->carets == "    ^");
    excerpt = source_excerpt("ab\tB", 1, 4, 1, 5);
    CHECK(excerpt->line == "ab  B");
    CHECK(excerpt->carets == "    ^");
    excerpt = source_excerpt("\u96FB = e\u0301 x", 1, 8, 1, 9); // columns count code points
    CHECK(excerpt->carets == "       ^");
    excerpt = source_excerpt("r = \"4 m\u03A9\" x", 1, 5, 1, 10);
    CHECK(excerpt->carets == "    ^~~~~");
}

TEST_CASE("what a terminal must not see is shown as an escape, and the carets follow") {
    auto const excerpt = source_excerpt("n = \"\x1b[2J\" x", 1, 12, 1, 13);
    CHECK(excerpt->line == "n = \"\\x1b[2J\" x");
    CHECK(excerpt->carets == "              ^");
}

TEST_CASE("a place of several lines is marked to the end of its first") {
    auto const excerpt = source_excerpt("[batteries]\r\nA = {\r\n}", 1, 2, 2, 3);
    CHECK(excerpt->line == "[batteries]");
    CHECK(excerpt->carets == " ^~~~~~~~~~");
}

TEST_CASE("a place beyond the line's end gets one caret, one beyond the text nothing") {
    auto const excerpt = source_excerpt("ab\ncd", 1, 9, 1, 12);
    CHECK(excerpt->line == "ab");
    CHECK(excerpt->carets == "  ^");
    CHECK(source_excerpt("ab\ncd", 2, 1, 2, 1)->carets == "^");
    CHECK(source_excerpt("ab\n", 2, 1, 2, 1)->line.empty());
    CHECK(!source_excerpt("ab\ncd", 3, 1, 3, 1));
    CHECK(!source_excerpt("ab", 0, 0, 0, 0));
    CHECK(!source_excerpt("ab", -5, 1, 1, 1));
    CHECK(source_excerpt("ab", 1, -5, 1, -9)->carets == "^");
    CHECK(source_excerpt("", 1, 1, 1, 1)->carets == "^");
}

TEST_CASE("a long line is shown as a window around the place") {
    for (int column : {1, 2, 30, 100, 500, 999, 1000}) {
        std::string line(1000, 'x');
        line[static_cast<std::size_t>(column) - 1] = 'B';
        auto const excerpt = source_excerpt(line, 1, column, 1, column + 1);
        CHECK(display_width(excerpt->line) <= 120);
        CHECK(display_width(excerpt->line) > 80);
        auto const at = excerpt->carets.find('^');
        REQUIRE(at < excerpt->line.size());
        CHECK(excerpt->line[at] == 'B');
    }
    auto const whole = source_excerpt(std::string(1000, 'x'), 1, 1, 1, 1001);
    CHECK(whole->carets.size() <= 120);
    CHECK(whole->line.substr(whole->line.size() - 3) == "...");
}

TEST_CASE("of a line of a million characters only what is near the place is shown, wherever that is") {
    std::string line;
    for (int i = 0; i < 250'000; ++i)
        line += i % 10 == 3 ? "\u03A9 \t" : "xyz ";
    for (int column : {1, 480, 481, 482, 60'001, 700'000}) {
        auto const excerpt = source_excerpt(line, 1, column, 1, column + 1);
        REQUIRE(excerpt);
        CHECK(display_width(excerpt->line) <= 120);
        CHECK(excerpt->carets.size() <= excerpt->line.size());
        CHECK((excerpt->line.substr(0, 3) == "...") == (column > 1));
        CHECK(excerpt->line.substr(excerpt->line.size() - 3) == "...");
    }
}
