#include "bankwright/devices/charger_limits.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("a charger for six lead-acid cells holds between 13 and 14.7 V") {
    auto const range = charge_range(Chemistry::flooded, 6);
    CHECK(range.low.value() == doctest::Approx(13.02));
    CHECK(range.high.value() == doctest::Approx(14.7));
    CHECK_FALSE(range.source.confidence.empty());
}

TEST_CASE("a lead-acid charger is too high for gel and its float too low to fill lifepo4") {
    CHECK(charge_range(Chemistry::gel, 6).high.value() < 14.7);
    CHECK(charge_stages(Chemistry::lifepo4, 4).absorption_high.value() == doctest::Approx(14.6));
    CHECK(charge_range(Chemistry::lifepo4, 4).low.value() > 13.2);
}

TEST_CASE("the stages of every chemistry stand in order") {
    for (auto chemistry : {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4, Chemistry::nmc}) {
        auto const stages = charge_stages(chemistry, 1);
        CHECK(stages.float_low.value() < stages.float_high.value());
        CHECK(stages.float_high.value() <= stages.absorption_low.value());
        CHECK(stages.absorption_low.value() < stages.absorption_high.value());
    }
}

TEST_CASE("cold lead-acid wants more volts, lithium does not") {
    CHECK(temperature_compensation(Chemistry::agm, 6, celsius(15)).value() == doctest::Approx(0.24));
    CHECK(temperature_compensation(Chemistry::agm, 6, celsius(35)).value() == doctest::Approx(-0.24));
    CHECK(temperature_compensation(Chemistry::lifepo4, 4, celsius(15)).value() == 0.0);
    // a charger follows by its own figure, for as many cells as its voltage is made for
    struct Made {
        double volts;
        int cells;
    };
    for (auto const& [volts, cells] :
         {Made{7.2, 3}, Made{13.5, 6}, Made{14.7, 6}, Made{28.8, 12}, Made{43.2, 18}, Made{57.6, 24}, Made{59.2, 24}}) {
        Charger charger;
        charger.voltage = volts * si::volt;
        CHECK(held_voltage(charger, celsius(0)).value() == volts);
        charger.compensation = VoltagePerTemperature::from_value(-0.005);
        CHECK(held_voltage(charger, celsius(25)).value() == doctest::Approx(volts));
        CHECK(held_voltage(charger, celsius(35)).value() == doctest::Approx(volts - cells * 0.05));
    }
    CHECK_THROWS(held_voltage(Charger{}, celsius(25)));
}
