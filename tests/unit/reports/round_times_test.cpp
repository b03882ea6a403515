#include "bankwright/reports/round_times.hpp"
#include "bankwright/reports/tables/battery_table.hpp"
#include "bankwright/units/literals.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <string>
#include <vector>

#include <doctest/doctest.h>

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

TEST_CASE("what stays as it is takes two rows") {
    std::vector<BatterySample> samples;
    for (int minute = 0; minute <= 60; minute += 10) // falls, rests from 20 to 50, falls
        samples.push_back({minute * 60.0 * si::second,
                           {StateOfCharge::of(minute < 20   ? 1.0 - 0.01 * minute
                                              : minute < 60 ? 0.8
                                                            : 0.7)},
                           {0_A},
                           {12_V}});
    auto const text = battery_table(samples, {"A"});
    for (auto const* told : {"0 s ", "10 min", "20 min", "50 min", "1 h "})
        CHECK(text.find(told) != std::string::npos);
    for (auto const* left_out : {"30 min", "40 min"})
        CHECK(text.find(left_out) == std::string::npos);
}
