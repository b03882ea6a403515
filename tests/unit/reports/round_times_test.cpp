#include "bankwright/reports/round_times.hpp"
#include "bankwright/units/literals.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>

using namespace bankwright;
using namespace bankwright::literals;

TEST_CASE("a table steps by what a clock shows") {
    CHECK(round_step(20_s) == 2_s);
    CHECK(round_step(85_min) == 10_min);
    CHECK(round_step(130_min) == 10_min); // thirteen steps are not too many
    CHECK(round_step(131_min) == 15_min);
    CHECK(round_step(20_h) == 2_h);
    CHECK(round_step(200_h) == 24_h);
}

TEST_CASE("whatever the time, it is divided into four to thirteen steps") {
    for (double seconds = 5.0; seconds < 1e8; seconds *= 1.01) {
        double const steps = seconds / round_step(seconds * si::second).value();
        CHECK(steps > 4.0);
        CHECK(steps <= 13.0);
    }
}
