#include "bankwright/devices/battery_limits.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
Battery labeled(Chemistry chemistry, double volts) {
    Battery battery;
    battery.chemistry = chemistry;
    battery.voltage = volts * si::volt;
    battery.capacity = 360000.0 * si::coulomb;
    return battery;
}
} // namespace

TEST_CASE("a lead-acid discharge ends at 10.5 V for six cells, a lifepo4 one at 10 V for four") {
    CHECK(low_cutoff(labeled(Chemistry::flooded, 12))->value() == doctest::Approx(10.5));
    CHECK(low_cutoff(labeled(Chemistry::lifepo4, 12.8))->value() == doctest::Approx(10.0));
    CHECK(high_cutoff(labeled(Chemistry::lifepo4, 12.8))->value() == doctest::Approx(14.6));
}

TEST_CASE("a battery's own limits win over its chemistry's") {
    auto battery = labeled(Chemistry::lifepo4, 12.8);
    battery.low_cutoff = 11.2 * si::volt;
    battery.high_cutoff = 14.4 * si::volt;
    battery.max_discharge = 60.0 * si::ampere;
    battery.max_charge = 30.0 * si::ampere;
    CHECK(low_cutoff(battery)->value() == 11.2);
    CHECK(high_cutoff(battery)->value() == 14.4);
    CHECK(discharge_limit(battery)->value() == 60.0);
    CHECK(charge_limit(battery)->value() == 30.0);
}

TEST_CASE("a limit that nothing tells is not made up") {
    CHECK_FALSE(discharge_limit(labeled(Chemistry::flooded, 12)));
    CHECK_FALSE(low_cutoff(Battery{}));
    CHECK_FALSE(charge_limit(Battery{}));
    auto no_capacity = labeled(Chemistry::lifepo4, 12.8);
    no_capacity.capacity.reset();
    CHECK_FALSE(discharge_limit(no_capacity));
}

TEST_CASE("only lithium opens its own circuit, and is not charged in frost") {
    CHECK(has_protective_disconnect(labeled(Chemistry::nmc, 14.8)));
    CHECK_FALSE(has_protective_disconnect(labeled(Chemistry::gel, 12)));
    CHECK_FALSE(has_protective_disconnect(Battery{}));
    CHECK(in_celsius(temperature_limits(Chemistry::lifepo4).charge_low) == doctest::Approx(0.0));
    CHECK(in_celsius(temperature_limits(Chemistry::flooded).charge_low) < 0.0);
}

TEST_CASE("a charge or discharge at the chemistry's rate follows the capacity") {
    CHECK(discharge_limit(labeled(Chemistry::lifepo4, 12.8))->value() == doctest::Approx(100.0));
    CHECK(charge_limit(labeled(Chemistry::lifepo4, 12.8))->value() == doctest::Approx(50.0));
}
