#include "bankwright/devices/conductor_resistance.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
auto const no_joint = 0.0 * si::ohm;
Conductor two_meters_of_35() {
    Conductor c;
    c.id = "main";
    c.size = WireSize(35e-6 * si::square_meter);
    c.length = 2.0 * si::meter;
    return c;
}
} // namespace

TEST_CASE("two meters of 35 mm2 copper at 20 degC are about 1 milliohm") {
    // IEC 60028, 1/58 ohm mm2/m; strands are 2 % longer than the conductor (ASTM B496)
    CHECK(resistance(two_meters_of_35(), celsius(20), no_joint).value() == doctest::Approx(1.02 * 2.0 / 58.0 / 35.0));
}

TEST_CASE("copper gains 0.393 percent a kelvin of its value at 20 degC") {
    auto const cold = resistance(two_meters_of_35(), celsius(20), no_joint).value();
    CHECK(resistance(two_meters_of_35(), celsius(70), no_joint).value() == doctest::Approx(cold * 1.1965));
}

TEST_CASE("a conductor has two joints, its own value before the system's") {
    auto c = two_meters_of_35();
    auto const bare = resistance(c, celsius(20), no_joint).value();
    CHECK(resistance(c, celsius(20), 0.0001 * si::ohm).value() == doctest::Approx(bare + 0.0002));
    c.joint = 0.0003 * si::ohm;
    CHECK(resistance(c, celsius(20), 0.0001 * si::ohm).value() == doctest::Approx(bare + 0.0006));
}

TEST_CASE("a stated resistance is the whole of it") {
    auto c = two_meters_of_35();
    c.resistance = 0.005 * si::ohm;
    CHECK(resistance(c, celsius(90), 1.0 * si::ohm).value() == 0.005);
}

TEST_CASE("tinned strands have two or three percent more") {
    for (double mm2 : {0.5, 5.3, 13.3, 67.4, 240.0}) {
        auto const ratio = tinned_ratio(mm2 * 1e-6 * si::square_meter);
        CHECK(ratio > 1.015);
        CHECK(ratio < 1.035);
    }
}

TEST_CASE("a conductor without size or resistance names what is missing") {
    Conductor c;
    c.id = "J1";
    c.length = 1.0 * si::meter;
    CHECK_THROWS_WITH_AS(resistance(c, celsius(20), no_joint), doctest::Contains("size"), std::invalid_argument);
}
