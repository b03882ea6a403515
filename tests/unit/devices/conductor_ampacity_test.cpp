#include "bankwright/devices/conductor_ampacity.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
auto const basis = celsius(30);
Conductor wire(WireSize size, double insulation = 105.0) {
    Conductor conductor;
    conductor.size = size;
    conductor.insulation = celsius(insulation);
    return conductor;
}
WireSize mm2(double square_millimeters) { return WireSize(square_millimeters * 1e-6 * si::square_meter); }
double amperes(Conductor const& conductor, Temperature ambient = basis) {
    return ampacity(conductor, ambient)->current.value();
}
} // namespace

TEST_CASE("an insulation that nobody states is the 60 degC column, and the result says so") {
    auto conductor = wire(Awg{6});
    conductor.insulation.reset();
    auto const found = ampacity(conductor, basis);
    CHECK(found->current.value() == 80.0);
    CHECK(found->insulation_assumed);
    CHECK_FALSE(ampacity(wire(Awg{6}), basis)->insulation_assumed);
}

TEST_CASE("a size between the rows, or in mm2, takes the row below") {
    CHECK(amperes(wire(Awg{5})) == 120.0); // as 6 AWG
    CHECK(amperes(wire(Awg{7})) == 80.0);  // as 8 AWG
    CHECK(amperes(wire(mm2(16))) == 120.0);
    CHECK(amperes(wire(mm2(13.3))) == 120.0); // 6 AWG as printed, a hair below its exact area
    CHECK(amperes(wire(mm2(35))) == 210.0);   // 2 AWG
    CHECK(amperes(wire(mm2(240))) == 445.0);  // 4/0 is the last row
}

TEST_CASE("below the table there is no ampacity") {
    CHECK_FALSE(ampacity(wire(Awg{20}), basis));
    CHECK_FALSE(ampacity(wire(mm2(0.5)), basis));
    CHECK_FALSE(ampacity(wire(Awg{6}, 50.0), basis));
    CHECK_FALSE(ampacity(Conductor{}, basis));
    CHECK_FALSE(table_5(Awg{5}, celsius(105)));
}

TEST_CASE("an insulation rating between columns takes the column below") {
    CHECK(amperes(wire(Awg{6}, 70.0)) == amperes(wire(Awg{6}, 60.0)));
    CHECK(amperes(wire(Awg{6}, 85.0)) == amperes(wire(Awg{6}, 80.0)));
    CHECK(amperes(wire(Awg{6}, 300.0)) == amperes(wire(Awg{6}, 200.0)));
    auto in_fahrenheit = wire(Awg{6});
    in_fahrenheit.insulation = fahrenheit(221);
    CHECK(amperes(in_fahrenheit) == 120.0);
}

TEST_CASE("every column and row grows with thickness and with the insulation's rating") {
    for (int gauge = 17; gauge >= -2; --gauge)
        for (double rating : {60.0, 75.0, 80.0, 90.0, 105.0, 125.0, 200.0}) {
            CHECK(amperes(wire(Awg{gauge - 1}, rating)) >= amperes(wire(Awg{gauge}, rating)));
            if (rating > 60.0) CHECK(amperes(wire(Awg{gauge}, rating)) >= amperes(wire(Awg{gauge}, 60.0)));
        }
}

TEST_CASE("engine space and bundle multiply") {
    auto conductor = wire(Awg{10});
    conductor.engine_space = true;
    conductor.bundle = 3;
    CHECK(amperes(conductor) == doctest::Approx(60.0 * 0.85 * 0.7));
    conductor.bundle = 2;
    CHECK(amperes(conductor) == doctest::Approx(51.0));
}

TEST_CASE("warm surroundings cost as the law behind note 1 says, cold ones earn nothing") {
    // the law against the published shares at 50 degC: within 1.5 % below 200 degC, where the note forgives more
    for (double rating : {60.0, 75.0, 80.0, 90.0, 105.0, 125.0}) {
        auto const share = amperes(wire(Awg{6}, rating), celsius(50)) / amperes(wire(Awg{6}, rating), basis);
        CHECK(share == doctest::Approx(engine_space_share(celsius(rating))).epsilon(0.015));
    }
    CHECK(amperes(wire(Awg{6}), celsius(-10)) == 120.0);
    CHECK(amperes(wire(Awg{6}, 60.0), celsius(70)) == 0.0);
}

TEST_CASE("a conductor's own temperature is its copper's and leaves the ampacity alone") {
    auto conductor = wire(Awg{6});
    conductor.temperature = celsius(75);
    CHECK(amperes(conductor) == 120.0);
}

TEST_CASE("an ampacity says where it comes from") {
    CHECK(ampacity(wire(Awg{6}), basis)->source.document == "33 CFR Part 183 Subpart I");
    CHECK_FALSE(ampacity(wire(Awg{6}), basis)->source.confidence.empty());
}
