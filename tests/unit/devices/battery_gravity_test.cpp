#include "bankwright/devices/battery_gravity.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("a reading at 80 degF needs no correction") {
    CHECK(gravity_at_80_fahrenheit(1.265, fahrenheit(80)) == doctest::Approx(1.265));
    CHECK(gravity_at_80_fahrenheit(1.265, fahrenheit(110)) == doctest::Approx(1.277));
    CHECK(gravity_at_80_fahrenheit(1.265, fahrenheit(50)) == doctest::Approx(1.253));
}

TEST_CASE("weak acid freezes long before strong acid") {
    double before = in_celsius(freezing_point(1.0));
    CHECK(before == doctest::Approx(0.0));
    for (double gravity = 1.02; gravity < 1.28; gravity += 0.02) {
        CHECK(in_celsius(freezing_point(gravity)) < before);
        before = in_celsius(freezing_point(gravity));
    }
}
