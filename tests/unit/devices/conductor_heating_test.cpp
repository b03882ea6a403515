#include "bankwright/devices/conductor_ampacity.hpp"
#include "bankwright/devices/conductor_heating.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
Conductor six_awg() {
    Conductor conductor;
    conductor.size = Awg{6};
    conductor.insulation = celsius(105);
    return conductor;
}
double warmth(Conductor const& conductor, double amperes, double ambient) {
    return in_celsius(*conductor_temperature(conductor, amperes * si::ampere, celsius(ambient)));
}
} // namespace

TEST_CASE("at its ampacity a conductor is as hot as its insulation bears") {
    CHECK(warmth(six_awg(), 120.0, 30.0) == doctest::Approx(105.0));
    CHECK(warmth(six_awg(), 60.0, 30.0) == doctest::Approx(30.0 + 75.0 / 4.0));
    CHECK(warmth(six_awg(), 0.0, 10.0) == doctest::Approx(10.0));
}

TEST_CASE("in an engine space the rise starts at 50 degC") {
    auto conductor = six_awg();
    conductor.engine_space = true;
    CHECK(warmth(conductor, 0.0, 20.0) == doctest::Approx(50.0));
    // note 1 leaves 85 %: there the copper comes to its rating within a degree
    CHECK(warmth(conductor, 102.0, 20.0) == doctest::Approx(105.0).epsilon(0.01));
}

TEST_CASE("what a conductor survives goes as the square of its section") {
    auto conductor = six_awg();
    auto const six = withstand(conductor)->value();
    conductor.size = WireSize(2.0 * area(Awg{6}));
    CHECK(withstand(conductor)->value() == doctest::Approx(4.0 * six));
    CHECK_FALSE(withstand(Conductor{}));
}

TEST_CASE("a short-circuit current is borne for a time that goes as its inverse square") {
    auto const once = withstand_time(six_awg(), 1000.0 * si::ampere)->value();
    CHECK(withstand_time(six_awg(), 2000.0 * si::ampere)->value() == doctest::Approx(once / 4.0));
}
