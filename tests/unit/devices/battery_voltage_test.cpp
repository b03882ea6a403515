// Published values are compared in tests/standards; here is what we intend beyond them.
#include "bankwright/devices/battery_voltage.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
constexpr Chemistry every_chemistry[] = {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4,
                                         Chemistry::nmc};
Battery twelve_volts(Chemistry chemistry) {
    Battery battery;
    battery.id = "A";
    battery.chemistry = chemistry;
    battery.voltage = 12.0 * si::volt;
    return battery;
}
} // namespace

TEST_CASE("open-circuit voltage rises with charge at every temperature") {
    for (auto chemistry : every_chemistry)
        for (double degrees = -30.0; degrees <= 60.0; degrees += 7.5) {
            auto before = open_circuit_cell_voltage(chemistry, StateOfCharge::of(0.0), celsius(degrees));
            for (int i = 1; i <= 1000; ++i) {
                auto const now = open_circuit_cell_voltage(chemistry, StateOfCharge::of(i / 1000.0), celsius(degrees));
                REQUIRE(now.value() > before.value());
                before = now;
            }
        }
}

TEST_CASE("a battery whose charge nobody states is full") {
    auto const battery = twelve_volts(Chemistry::agm);
    auto full = battery;
    full.charge = StateOfCharge::percent(100);
    CHECK(open_circuit_voltage(battery, celsius(25)) == open_circuit_voltage(full, celsius(25)));
}

TEST_CASE("a measured emf wins over chemistry and charge") {
    auto battery = twelve_volts(Chemistry::flooded);
    battery.emf = 11.4 * si::volt;
    battery.charge = StateOfCharge::percent(100);
    CHECK(open_circuit_voltage(battery, celsius(0)).value() == 11.4);
}

TEST_CASE("a dead cell takes its share of the voltage away") {
    auto battery = twelve_volts(Chemistry::flooded);
    auto const whole = open_circuit_voltage(battery, celsius(25)).value();
    battery.dead_cells = 1;
    CHECK(open_circuit_voltage(battery, celsius(25)).value() == doctest::Approx(whole * 5.0 / 6.0).epsilon(1e-12));
    battery.dead_cells = 9;
    CHECK(open_circuit_voltage(battery, celsius(25)).value() == 0.0);
}

TEST_CASE("a battery's own temperature wins over the ambient one") {
    auto battery = twelve_volts(Chemistry::flooded);
    battery.temperature = celsius(-10);
    CHECK(open_circuit_voltage(battery, celsius(30)) == open_circuit_voltage(battery, celsius(-10)));
}

TEST_CASE("charge from a rested voltage undoes open-circuit voltage") {
    for (auto chemistry : every_chemistry)
        for (double degrees : {-15.0, 0.0, 25.0, 40.0})
            for (double charge : {0.01, 0.1, 0.333, 0.5, 0.77, 0.99}) {
                auto const battery = twelve_volts(chemistry);
                auto const rested = open_circuit_voltage(battery, StateOfCharge::of(charge), celsius(degrees));
                auto const found = charge_from_voltage(battery, rested, celsius(degrees));
                CHECK(found.best.value() == doctest::Approx(charge).epsilon(1e-9));
                CHECK(found.low.value() <= found.best.value());
                CHECK(found.best.value() <= found.high.value());
            }
}

TEST_CASE("a reading beyond the curve is full or empty, never more") {
    auto const battery = twelve_volts(Chemistry::flooded);
    CHECK(charge_from_voltage(battery, 14.0 * si::volt, celsius(25)).best.value() == 1.0);
    CHECK(charge_from_voltage(battery, 3.0 * si::volt, celsius(25)).best.value() == 0.0);
}

TEST_CASE("an ordinary handheld meter cannot tell the charge on the flat part of a lifepo4 curve") {
    auto const battery = twelve_volts(Chemistry::lifepo4);
    auto const middle = open_circuit_voltage(battery, StateOfCharge::percent(60), celsius(25));
    auto const found = charge_from_voltage(battery, middle, celsius(25));
    CHECK(found.high.value() - found.low.value() > 0.3);
}

TEST_CASE("without chemistry and emf the missing key is named") {
    Battery battery;
    battery.id = "A";
    battery.voltage = 12.0 * si::volt;
    CHECK_THROWS_WITH_AS(open_circuit_voltage(battery, celsius(25)), doctest::Contains("chemistry"),
                         std::invalid_argument);
}
