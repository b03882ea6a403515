#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
Battery hundred_ampere_hours(Chemistry chemistry, double label = 12.0) {
    Battery battery;
    battery.id = "A";
    battery.chemistry = chemistry;
    battery.voltage = label * si::volt;
    battery.capacity = 360000.0 * si::coulomb;
    return battery;
}
double milliohms(Battery const& battery, double degrees = 25.0) {
    return internal_resistance(battery, celsius(degrees)).value() * 1e3;
}
} // namespace

TEST_CASE("a stated resistance is taken as it is, cold or discharged") {
    auto battery = hundred_ampere_hours(Chemistry::agm);
    battery.resistance = 0.004 * si::ohm;
    battery.charge = StateOfCharge::percent(10);
    battery.cranking = 600.0 * si::ampere;
    CHECK(milliohms(battery, -20.0) == 4.0);
}

TEST_CASE("a 100 Ah 12 V lead-acid battery lies in the usual 2 to 6 milliohms") {
    for (auto chemistry : {Chemistry::flooded, Chemistry::agm, Chemistry::gel}) {
        CHECK(milliohms(hundred_ampere_hours(chemistry)) > 2.0);
        CHECK(milliohms(hundred_ampere_hours(chemistry)) < 6.0);
    }
}

TEST_CASE("cranking amperes and capacity agree on the size of the resistance") {
    auto battery = hundred_ampere_hours(Chemistry::flooded);
    auto const by_capacity = milliohms(battery);
    battery.cranking = 600.0 * si::ampere; // usual for 100 Ah
    CHECK(milliohms(battery) == doctest::Approx(by_capacity).epsilon(0.5));
}

TEST_CASE("two batteries in one are half the resistance, two in series twice") {
    auto battery = hundred_ampere_hours(Chemistry::agm);
    auto const one = milliohms(battery);
    battery.capacity = 2.0 * *battery.capacity;
    CHECK(milliohms(battery) == doctest::Approx(one / 2));
    CHECK(milliohms(hundred_ampere_hours(Chemistry::agm, 24.0)) == doctest::Approx(2 * one));
}

TEST_CASE("resistance falls with charge and with temperature") {
    for (auto chemistry : {Chemistry::flooded, Chemistry::lifepo4, Chemistry::nmc}) {
        CHECK(resistance_ratio(chemistry, celsius(25)) == doctest::Approx(1.0));
        CHECK(resistance_ratio(chemistry, StateOfCharge::of(1)) == doctest::Approx(1.0));
        for (double t = -15.0; t < 25.0; t += 1.0)
            CHECK(resistance_ratio(chemistry, celsius(t)) > resistance_ratio(chemistry, celsius(t + 1.0)));
        for (double s = 0.0; s < 0.99; s += 0.1)
            CHECK(resistance_ratio(chemistry, StateOfCharge::of(s)) >
                  resistance_ratio(chemistry, StateOfCharge::of(s + 0.1)));
    }
}

TEST_CASE("the missing key is named") {
    Battery battery;
    battery.id = "A";
    battery.chemistry = Chemistry::agm;
    battery.voltage = 12.0 * si::volt;
    CHECK_THROWS_WITH_AS(internal_resistance(Battery{}, celsius(25)), doctest::Contains("or `chemistry`"),
                         std::invalid_argument);
    CHECK_THROWS_WITH_AS(internal_resistance(battery, celsius(25)), doctest::Contains("capacity"),
                         std::invalid_argument);
}

// Short-circuit currents by their makers, quoted: flooded cells of 845 Ah 9.6 kA and 2490 Ah 29.1 kA, an AGM battery of
// 90 Ah 2.3 kA; a 6 V battery 2.4 kA in the example of ABYC E-11, its capacity taken as 220 Ah.
TEST_CASE("short-circuit currents are those that makers state, within what the label leaves open") {
    auto const kiloamperes = [](Chemistry chemistry, int cells, double ampere_hours) {
        Battery battery;
        battery.id = "A";
        battery.chemistry = chemistry;
        battery.cells = cells;
        battery.capacity = ampere_hours * 3600.0 * si::coulomb;
        auto const amperes = open_circuit_voltage(battery, celsius(25)) / internal_resistance(battery, celsius(25));
        return amperes.value() / 1e3;
    };
    CHECK(kiloamperes(Chemistry::flooded, 1, 845) == doctest::Approx(9.6).epsilon(0.05));
    CHECK(kiloamperes(Chemistry::flooded, 1, 2490) == doctest::Approx(29.1).epsilon(0.05));
    CHECK(kiloamperes(Chemistry::flooded, 1, 4980) == doctest::Approx(58.2).epsilon(0.05)); // as two side by side
    CHECK(kiloamperes(Chemistry::agm, 6, 90) == doctest::Approx(2.3).epsilon(0.05));
    Battery six_volts;
    six_volts.chemistry = Chemistry::flooded;
    CHECK(kiloamperes(Chemistry::flooded, 3, 220) ==
          doctest::Approx(2.4).epsilon(resistance_spread(six_volts).value() + 0.1));
}
