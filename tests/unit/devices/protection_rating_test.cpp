#include "bankwright/devices/protection_rating.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("the next standard size is the rating itself where there is one") {
    CHECK(next_standard_size(60.0 * si::ampere)->value() == 60.0);
    CHECK(next_standard_size(61.0 * si::ampere)->value() == 70.0);
    CHECK(next_standard_size(0.2 * si::ampere)->value() == 1.0);
    CHECK_FALSE(next_standard_size(1001.0 * si::ampere));
}

TEST_CASE("ABYC grants the next standard size and no more") {
    CHECK(abyc_rating_limit(120.0 * si::ampere).rating.value() == 120.0);
    CHECK(abyc_rating_limit(102.0 * si::ampere).rating.value() == 110.0);
    CHECK(abyc_rating_limit(0.5 * si::ampere).rating.value() == 0.5); // 1 A would be 200 %
    CHECK(abyc_rating_limit(5000.0 * si::ampere).rating.value() == 5000.0);
}

TEST_CASE("the federal rule grants 150 percent below 50 V and the next size from there on") {
    CHECK(cfr_rating_limit(100.0 * si::ampere, 36.0 * si::volt).rating.value() == doctest::Approx(150.0));
    CHECK(cfr_rating_limit(102.0 * si::ampere, 72.0 * si::volt).rating.value() == 110.0);
}

TEST_CASE("above the table's voltages the highest rows are the least to ask, and the source says so") {
    auto const need = interrupting_need(900.0 * si::ampere, 48.0 * si::volt, BreakerPlace::main);
    CHECK(need.current.value() == 3000.0);
    CHECK(need.source.confidence.find("table ends") != std::string_view::npos);
}

TEST_CASE("sheathing buys distance") {
    CHECK(distance_limit(Routing::open).distance.value() == doctest::Approx(0.1778));
    CHECK(distance_limit(Routing::enclosed).distance.value() == doctest::Approx(1.016));
    CHECK(distance_limit(Routing::enclosed_from_battery).distance.value() == doctest::Approx(1.8288));
    CHECK(distance_limit(Routing::enclosed_from_battery).source.confidence.find("recalled") != std::string_view::npos);
}
