#include "bankwright/devices/battery_nominal.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
int cells_of(Chemistry chemistry, double label) {
    Battery battery;
    battery.chemistry = chemistry;
    battery.voltage = label * si::volt;
    return cell_count(battery);
}
bool fits(double sum, bool lithium, double system) { return fits_system(sum * si::volt, lithium, system * si::volt); }
} // namespace

TEST_CASE("lead-acid labels are two volts a cell") {
    CHECK(cells_of(Chemistry::flooded, 6) == 3);
    CHECK(cells_of(Chemistry::agm, 8) == 4);
    CHECK(cells_of(Chemistry::gel, 12) == 6);
    CHECK(cells_of(Chemistry::flooded, 2) == 1);
}

TEST_CASE("lifepo4 labels name the voltage or the class") {
    CHECK(cells_of(Chemistry::lifepo4, 12.8) == 4);
    CHECK(cells_of(Chemistry::lifepo4, 12) == 4);
    CHECK(cells_of(Chemistry::lifepo4, 25.6) == 8);
    CHECK(cells_of(Chemistry::lifepo4, 36) == 12);
    CHECK(cells_of(Chemistry::lifepo4, 38.4) == 12);
    CHECK(cells_of(Chemistry::lifepo4, 51.2) == 16);
    CHECK(cells_of(Chemistry::lifepo4, 48) == 16);
    CHECK(cells_of(Chemistry::lifepo4, 3.2) == 1);
}

TEST_CASE("nmc labels are 3.6 or 3.7 V a cell") {
    CHECK(cells_of(Chemistry::nmc, 14.8) == 4);
    CHECK(cells_of(Chemistry::nmc, 11.1) == 3);
    CHECK(cells_of(Chemistry::nmc, 36) == 10);
    CHECK(cells_of(Chemistry::nmc, 25.9) == 7);
    CHECK(cells_of(Chemistry::nmc, 51.8) == 14);
    CHECK(cells_of(Chemistry::nmc, 50.4) == 14);
}

TEST_CASE("cells that the owner states win over the label") {
    Battery battery;
    battery.chemistry = Chemistry::lifepo4;
    battery.voltage = 48.0 * si::volt;
    battery.cells = 15;
    CHECK(cell_count(battery) == 15);
}

TEST_CASE("the nominal voltage follows from the cells when the label is missing") {
    Battery battery;
    battery.id = "A";
    CHECK_THROWS_WITH_AS(nominal_voltage(battery), doctest::Contains("voltage"), std::invalid_argument);
    CHECK(chemistry_named("gel") == Chemistry::gel);
    CHECK(!chemistry_named("alkaline"));
    CHECK_THROWS_WITH_AS(cell_count(Battery{}), doctest::Contains("needs `cells`"), std::invalid_argument);
    battery.chemistry = Chemistry::lifepo4;
    battery.cells = 4;
    CHECK(nominal_voltage(battery).value() == doctest::Approx(12.8));
}

TEST_CASE("lithium labels fit the lead-acid system they stand in for") {
    CHECK(fits(12.8, true, 12));
    CHECK(fits(51.2, true, 48));
    CHECK(fits(38.4, true, 36));
    CHECK(fits(25.9, true, 24));
    CHECK_FALSE(fits(38.4, true, 24));
    CHECK_FALSE(fits(25.6, true, 36));
}

TEST_CASE("lead-acid labels must add up exactly") {
    CHECK(fits(36, false, 36));
    CHECK_FALSE(fits(38.4, false, 36));
    CHECK_FALSE(fits(24, false, 36));
    CHECK_FALSE(fits(-36, false, 36));
}
