#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_recovery.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
auto const room = celsius(25);
constexpr double hour = 3600.0;
Battery hundred_ampere_hours(Chemistry chemistry = Chemistry::flooded) {
    Battery battery;
    battery.id = "A";
    battery.chemistry = chemistry;
    battery.voltage = 12.0 * si::volt;
    battery.capacity = 100.0 * hour * si::coulomb;
    return battery;
}
double hours(Battery const& battery, double amperes, Temperature at = room) {
    return time_to_empty(battery, amperes * si::ampere, at).value() / hour;
}
} // namespace

TEST_CASE("at its 20-hour current a battery lasts 20 hours whatever the exponent") {
    for (auto chemistry : {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4, Chemistry::nmc})
        CHECK(hours(hundred_ampere_hours(chemistry), 5.0) == doctest::Approx(20.0));
}

TEST_CASE("a battery meets both of its ratings") {
    auto battery = hundred_ampere_hours();
    battery.reserve = 180.0 * 60.0 * si::second;
    CHECK(hours(battery, 5.0) == doctest::Approx(20.0));
    CHECK(hours(battery, 25.0, celsius((80.0 - 32.0) / 1.8)) == doctest::Approx(3.0)); // SAE J537: at 80 degF
}

TEST_CASE("a higher current gives less in all, a lower one no more than is rated") {
    auto const battery = hundred_ampere_hours();
    auto before = usable_capacity(battery, 5.0 * si::ampere, room);
    CHECK(usable_capacity(battery, 0.5 * si::ampere, room).value() == doctest::Approx(before.value()));
    for (double amperes = 6.0; amperes < 200.0; amperes += 5.0) {
        auto const now = usable_capacity(battery, amperes * si::ampere, room);
        CHECK(now.value() < before.value());
        before = now;
    }
}

TEST_CASE("health, charge and cold each take their share") {
    auto battery = hundred_ampere_hours(Chemistry::lifepo4);
    auto const whole = hours(battery, 5.0);
    battery.charge = StateOfCharge::percent(50);
    CHECK(hours(battery, 5.0) == doctest::Approx(whole / 2));
    battery.charge.reset();
    battery.health = Health::percent(80);
    CHECK(hours(battery, 4.0) == doctest::Approx(20.0));
    CHECK(hours(hundred_ampere_hours(), 5.0, celsius(0)) < hours(hundred_ampere_hours(), 5.0));
}

TEST_CASE("the exponent is the chemistry's where no second rating tells it") {
    auto battery = hundred_ampere_hours(Chemistry::agm);
    CHECK(peukert_exponent(battery) == 1.10);
    battery.reserve = 185.0 * 60.0 * si::second;
    CHECK(peukert_exponent(battery) == doctest::Approx(1.1765).epsilon(1e-4));
    battery.capacity = 500.0 * hour * si::coulomb; // its 20-hour current is the reserve current: nothing to tell
    CHECK(peukert_exponent(battery) == 1.10);
    CHECK(peukert_exponent(Battery{}) == 1.0);
}

TEST_CASE("an exponent from odd ratings stays between 1 and 2") {
    auto battery = hundred_ampere_hours();
    battery.reserve = 600.0 * 60.0 * si::second;
    CHECK(peukert_exponent(battery) == 1.0);
    battery.reserve = 1.0 * 60.0 * si::second;
    CHECK(peukert_exponent(battery) == 2.0);
}

TEST_CASE("no battery is asked for a capacity that it does not state") {
    Battery battery;
    battery.id = "A";
    CHECK_THROWS_WITH_AS(rated_capacity(battery), doctest::Contains("capacity"), std::invalid_argument);
}

TEST_CASE("a standing battery loses its monthly share, twice as fast when ten kelvin warmer") {
    auto const month = 365.25 / 12 * 86400 * si::second;
    auto const full = StateOfCharge::of(1.0);
    auto const left = charge_after_standing(Chemistry::agm, full, month, room).value();
    CHECK(left == doctest::Approx(0.97));
    CHECK(charge_after_standing(Chemistry::agm, full, month, celsius(35)).value() == doctest::Approx(left * left));
}

TEST_CASE("no chemistry gives back more charge than was put in") {
    for (auto chemistry : {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4, Chemistry::nmc}) {
        CHECK(coulombic_efficiency(chemistry).value() > 0.8);
        CHECK(coulombic_efficiency(chemistry).value() <= 1.0);
    }
}
