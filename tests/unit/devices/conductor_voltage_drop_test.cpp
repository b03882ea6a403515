#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/devices/conductor_voltage_drop.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("the ISO formula understates what copper loses at 20 degC by about five percent") {
    auto const area = 16e-6 * si::square_meter;
    auto const length = 10.0 * si::meter;
    auto const current = 50.0 * si::ampere;
    Voltage const copper = copper_resistance(area, celsius(20)) * length * current;
    CHECK(iso_10133_drop(current, length, area).value() / copper.value() == doctest::Approx(0.951).epsilon(0.001));
}

TEST_CASE("a wire of the area that ABYC asks for loses no more than was allowed") {
    auto const length = 12.0 * si::meter;
    auto const current = 50.0 * si::ampere;
    auto const allowed = allowed_drop(36.0 * si::volt, true);
    CHECK(allowed.value() == doctest::Approx(1.08));
    Voltage const lost = copper_resistance(abyc_area(current, length, allowed), celsius(25)) * length * current;
    CHECK(lost.value() < allowed.value());
    CHECK(lost.value() > 0.95 * allowed.value());
}
