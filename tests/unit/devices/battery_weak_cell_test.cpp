#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_reversal.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"
#include "bankwright/units/literals.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

Battery with_weak_cells(int count, double percent, Chemistry chemistry = Chemistry::agm) {
    Battery battery;
    battery.id = "A";
    battery.chemistry = chemistry;
    battery.voltage = 12_V;
    battery.capacity = 100_Ah;
    battery.weak_cells = count;
    battery.weak_capacity = Health::percent(percent);
    return battery;
}

double charge_of(Battery const& battery, double sound) {
    return weak_cell_charge(battery, StateOfCharge::of(sound)).value();
}

} // namespace

TEST_CASE("a weak cell gives as many ampere-hours as its neighbors, out of fewer") {
    // By hand: 30 Ah out of 100 Ah, and out of 60 Ah.
    auto const battery = with_weak_cells(1, 60);
    CHECK(charge_of(battery, 1.0) == 1.0);
    CHECK(charge_of(battery, 0.7) == doctest::Approx(0.5).epsilon(1e-12));
    CHECK(weak_cell_empties_at(battery).value() == doctest::Approx(0.4).epsilon(1e-12));
    CHECK(charge_of(battery, 0.4) == doctest::Approx(0.0).epsilon(1e-12));
    CHECK(charge_of(battery, 0.2) == 0.0);
}

TEST_CASE("the battery shows its sound cells and its weak one, each at its own charge") {
    auto const battery = with_weak_cells(1, 60);
    auto const cell = [](double charge) {
        return open_circuit_cell_voltage(Chemistry::agm, StateOfCharge::of(charge), celsius(25)).value();
    };
    auto const shown = [&](double charge) {
        return open_circuit_voltage(battery, StateOfCharge::of(charge), celsius(25)).value();
    };
    CHECK(shown(1.0) == doctest::Approx(6.0 * cell(1.0)).epsilon(1e-12));
    CHECK(shown(0.7) == doctest::Approx(5.0 * cell(0.7) + cell(0.5)).epsilon(1e-12));
    CHECK(shown(0.4) == doctest::Approx(5.0 * cell(0.4)).epsilon(1e-12));
    CHECK(shown(0.1) == doctest::Approx(5.0 * cell(0.1)).epsilon(1e-12)); // as if it were dead
}

TEST_CASE("with a weak cell the voltage still falls with every ampere-hour, so that a reading says the charge") {
    for (auto chemistry : {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4, Chemistry::nmc}) {
        auto battery = with_weak_cells(1, 70, chemistry);
        battery.cells = is_lithium(chemistry) ? 4 : 6;
        double above = 1e9;
        for (int k = 1000; k >= 0; --k) {
            auto const volts = open_circuit_voltage(battery, StateOfCharge::of(k / 1000.0), celsius(25)).value();
            CHECK(volts <= above);
            above = volts;
        }
        auto const rested = open_circuit_voltage(battery, StateOfCharge::of(0.6), celsius(25));
        CHECK(charge_from_voltage(battery, rested, celsius(25)).best.value() == doctest::Approx(0.6).epsilon(1e-6));
    }
}

TEST_CASE("an empty weak cell is turned around by what the others drive through it") {
    auto battery = with_weak_cells(1, 60);
    battery.resistance = 6_mohm;
    // By hand: at least an even sixth of 6 mohm, times 40 A.
    auto const turned = weak_cell_voltage(battery, StateOfCharge::of(0.3), 40_A, celsius(25)).value();
    CHECK(turned <= -0.040);
    CHECK(turned > -0.240); // and less than all of it
    CHECK(weak_cell_voltage(battery, StateOfCharge::of(0.3), 0_A, celsius(25)).value() == 0.0);
    CHECK(weak_cell_voltage(battery, StateOfCharge::of(0.9), 40_A, celsius(25)).value() > 1.9);
}

TEST_CASE("the resistances of the cells, sound and weak, add up to the battery's") {
    auto battery = with_weak_cells(2, 50);
    auto const at = StateOfCharge::of(0.6); // the weak ones stand at 20 %
    auto const across = [&](Battery const& one, Current current) {
        return weak_cell_voltage(one, at, current, celsius(25)).value();
    };
    auto const weak = (across(battery, 0_A) - across(battery, 10_A)) / 10.0; // [ohm]
    auto sound = battery;
    sound.weak_cells.reset();
    auto const whole = internal_resistance(battery, at, celsius(25)).value();
    auto const four_sound = internal_resistance(sound, at, celsius(25)).value() * 4.0 / 6.0;
    CHECK(whole == doctest::Approx(four_sound + 2.0 * weak).epsilon(1e-12));
    CHECK(weak > internal_resistance(sound, at, celsius(25)).value() / 6.0);
}

TEST_CASE("a battery whose weak cells are all sound, or that says nothing of them, has none") {
    auto battery = with_weak_cells(0, 60);
    CHECK_FALSE(has_weak_cell(battery));
    CHECK_FALSE(has_weak_cell(with_weak_cells(1, 100)));
    auto plain = battery;
    plain.weak_cells.reset();
    plain.weak_capacity.reset();
    CHECK(open_circuit_voltage(battery, StateOfCharge::of(0.5), celsius(25)) ==
          open_circuit_voltage(plain, StateOfCharge::of(0.5), celsius(25)));
    battery.chemistry.reset();
    CHECK_THROWS_AS(weak_cell_open_circuit_voltage(battery, StateOfCharge::of(0.5), celsius(25)),
                    std::invalid_argument);
    CHECK_THROWS_AS(weak_cell_voltage(plain, StateOfCharge::of(0.5), 1_A, celsius(25)), std::invalid_argument);
}
