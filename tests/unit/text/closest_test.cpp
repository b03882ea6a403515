#include "bankwright/text/closest.hpp"

#include <array>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("an edit is an insertion, a deletion, a replacement or a swap of neighbors") {
    CHECK(edit_distance("", "") == 0);
    CHECK(edit_distance("", "abc") == 3);
    CHECK(edit_distance("abc", "") == 3);
    CHECK(edit_distance("charge", "charge") == 0);
    CHECK(edit_distance("charge", "chare") == 1);
    CHECK(edit_distance("charge", "chargge") == 1);
    CHECK(edit_distance("charge", "cherge") == 1);
    CHECK(edit_distance("charge", "chareg") == 1);
    CHECK(edit_distance("kitten", "sitting") == 3);
    CHECK(edit_distance("ca", "abc") == 3); // optimal string alignment edits no substring twice
}

TEST_CASE("case, '-' and '_' do not count as edits") {
    CHECK(edit_distance("MAh", "mAh") == 0);
    CHECK(edit_distance("dead-cells", "dead_cells") == 0);
}

TEST_CASE("the nearest key is offered and a far one is not") {
    std::vector<std::string> const keys{"capacity", "capacity_hours", "charge", "chemistry", "current", "voltage"};
    CHECK(closest("volatge", keys) == "voltage");
    CHECK(closest("Capcity", keys) == "capacity");
    CHECK(closest("capacity-hours", keys) == "capacity_hours");
    CHECK(closest("chemstry", keys) == "chemistry");
    CHECK(closest("curent", keys) == "current");
    CHECK(closest("color", keys) == std::nullopt);
    CHECK(closest("xyz", keys) == std::nullopt);
    CHECK(closest("", keys) == std::nullopt);
    CHECK(closest("voltage", std::vector<std::string>{}) == std::nullopt);
}

TEST_CASE("one letter is never another letter") {
    CHECK(closest("B", {"A", "C"}) == std::nullopt);
    CHECK(closest("a", {"A", "C"}) == "A");
}

TEST_CASE("of equally near words the first is offered") {
    CHECK(closest("J3", {"J1", "J2"}) == "J1");
    CHECK(closest("bat", std::array<std::string_view, 2>{"cat", "hat"}) == "cat");
}

TEST_CASE("a word longer than anybody types is not compared") {
    CHECK(closest(std::string(100'000, 'a'), {"voltage"}) == std::nullopt);
    CHECK(closest("voltage", std::vector<std::string>{std::string(100'000, 'a'), "voltage"}) == "voltage");
}
