#include "bankwright/text/quoted_names.hpp"

#include <doctest/doctest.h>

using bankwright::without_quotes;

TEST_CASE("names lose their quotes and nothing else") {
    CHECK(without_quotes("turn `B` around, or swap `B+` and `B-`") == "turn B around, or swap B+ and B-");
    CHECK(without_quotes("nothing quoted").size() == 14u);
    CHECK(without_quotes("").empty());
    CHECK(without_quotes("one ` alone") == "one  alone");
}

TEST_CASE("a loop reads with arrows from post to post") {
    CHECK(without_quotes("the loop `B-` -B- `B+` -J2- `A-` adds up") ==
          "the loop B- \u2192 B \u2192 B+ \u2192 J2 \u2192 A- adds up");
    CHECK(without_quotes("`A` - `B`") == "A - B");
}
