#include "bankwright/text/stated_accuracy.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("text/stated_accuracy");

TEST_CASE("per cent of the reading and counts of the last digit, as makers write them") {
    for (auto const* text : {"0.5 % + 2 digits", "0.5%+2digits", " 0.5 %  + 2 counts ", "0.50 % + 2 digit"}) {
        CAPTURE(text);
        auto const accuracy = parse_stated_accuracy(text);
        REQUIRE(accuracy);
        CHECK(accuracy->of_reading == doctest::Approx(0.005));
        CHECK(accuracy->digits == 2);
    }
    auto const share_alone = parse_stated_accuracy("1 %");
    REQUIRE(share_alone);
    CHECK(share_alone->of_reading == doctest::Approx(0.01));
    CHECK(share_alone->digits == 0);
}

TEST_CASE("what is no accuracy, or none that a meter has, is none") {
    for (auto const* text :
         {"", "%", "0.5", "0.5 % + 2", "0.5 % + 1.5 digits", "-1 % + 2 digits", "11 %", "0.5 % + 101 digits",
          "0.5 % - 2 digits", "nan % + 2 digits", "1e400 %", "0.5 % + 2 digits of it", "good"}) {
        CAPTURE(text);
        CHECK_FALSE(parse_stated_accuracy(text));
    }
}
