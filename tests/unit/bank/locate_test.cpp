#include "bankwright/bank/locate.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("a finding gets the place of its key, of its part where the key has none, and else keeps none") {
    SourceMap map;
    map.add("A", "", {{5, 1}, {5, 40}});
    map.add("A", "charge", {{5, 20}, {5, 35}});
    map.add("B", "", {{6, 1}, {6, 40}});
    Finding key{.parts = {"A"}, .key = "charge"};
    Finding part{.parts = {"A"}, .key = "capacity"};
    Finding second{.parts = {"unheard-of", "B"}, .key = "charge"};
    Finding whole_bank{};
    Finding placed{.parts = {"A"}, .region = Region{{1, 2}, {3, 4}}};
    Findings findings{key, part, second, whole_bank, placed};
    locate(findings, map);
    CHECK(findings[0].region == Region{{5, 20}, {5, 35}});
    CHECK(findings[1].region == Region{{5, 1}, {5, 40}});
    CHECK(findings[2].region == Region{{6, 1}, {6, 40}});
    CHECK_FALSE(findings[3].region);
    CHECK(findings[4].region == Region{{1, 2}, {3, 4}});
}

TEST_CASE("without a file no finding gets a place") {
    Findings findings{Finding{.parts = {"A"}}};
    locate(findings, SourceMap{});
    CHECK_FALSE(findings[0].region);
}
