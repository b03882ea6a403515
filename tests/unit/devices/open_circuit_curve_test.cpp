#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/open_circuit_curve.hpp"
#include "bankwright/units/literals.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

Battery twelve_volts(Chemistry chemistry) {
    Battery b;
    b.id = "A";
    b.chemistry = chemistry;
    b.voltage = is_lithium(chemistry) ? 12.8_V : 12_V;
    if (chemistry == Chemistry::nmc) {
        b.voltage.reset();
        b.cells = 4;
    }
    return b;
}

constexpr Chemistry chemistries[] = {Chemistry::flooded, Chemistry::gel, Chemistry::agm, Chemistry::lifepo4,
                                     Chemistry::nmc};

// The largest difference of the curve from the function that it stands for, [V], ends and knots among the places.
double worst_difference(Battery const& battery, Temperature ambient) {
    auto const curve = open_circuit_curve(battery, ambient);
    double worst = 0.0;
    auto const compare = [&](double charge) {
        auto const direct = open_circuit_voltage(battery, StateOfCharge::of(charge), ambient).value();
        worst = std::max(worst, std::abs(curve.at(charge) - direct));
    };
    for (int i = 0; i <= 1000; ++i)
        compare(i / 1000.0);
    for (auto const& piece : curve.pieces())
        for (double near : {-1e-9, 0.0, 1e-9})
            compare(std::clamp(piece.origin + near, 0.0, 1.0));
    return worst;
}

} // namespace

TEST_CASE("a curve is the open-circuit voltage of every chemistry at every charge and temperature") {
    for (auto const chemistry : chemistries)
        for (double degrees : {-20.0, 3.3, 25.0, 48.0}) {
            CAPTURE(static_cast<int>(chemistry));
            CAPTURE(degrees);
            CHECK(worst_difference(twelve_volts(chemistry), celsius(degrees)) < 1e-13);
        }
}

TEST_CASE("it is so with weak cells that are empty before the others, and with dead ones") {
    for (auto const chemistry : chemistries)
        for (double holds : {0.3, 0.75, 0.995}) {
            auto battery = twelve_volts(chemistry);
            battery.weak_cells = 2;
            battery.weak_capacity = Health::of(holds);
            battery.dead_cells = 1;
            CAPTURE(static_cast<int>(chemistry));
            CAPTURE(holds);
            CHECK(worst_difference(battery, 25_degC) < 1e-12); // over the collapse, which is steep
        }
}

TEST_CASE("a curve never falls with the charge and goes on evenly from piece to piece") {
    for (auto const chemistry : chemistries) {
        auto const curve = open_circuit_curve(twelve_volts(chemistry), 10_degC);
        double before = curve.at(0.0), fall = 0.0;
        for (int i = 1; i <= 2000; ++i) {
            auto const volts = curve.at(i / 2000.0);
            fall = std::max(fall, before - volts);
            before = volts;
        }
        CHECK(fall < 1e-14);
        auto const& pieces = curve.pieces();
        for (std::size_t k = 0; k + 1 < pieces.size(); ++k)
            CHECK(pieces[k].at(pieces[k].to) == doctest::Approx(pieces[k + 1].at(pieces[k].to)).epsilon(1e-14));
        CHECK(pieces.front().from < 0.0);
        CHECK(pieces.back().to > 1.0);
    }
}

TEST_CASE("two batteries share a curve if chemistry, cells and temperature are the same, whatever they hold") {
    auto const one = twelve_volts(Chemistry::agm);
    auto other = one;
    other.capacity = 55_Ah;
    CHECK(share_open_circuit_curve(one, other));
    other.temperature = 5_degC;
    CHECK_FALSE(share_open_circuit_curve(one, other));
    other = one;
    other.weak_cells = 1;
    other.weak_capacity = Health::of(0.8);
    CHECK_FALSE(share_open_circuit_curve(one, other));
}

// SAE J537 ends a rating at 1.75 V a cell; Shepherd's hyperbola (battery_voltage.hpp) leads there from nothing at hand.
TEST_CASE("below nothing at hand a lead-acid curve falls to 1.75 V a cell as the function does, steeper and steeper") {
    for (auto const chemistry : {Chemistry::flooded, Chemistry::gel, Chemistry::agm}) {
        auto const battery = twelve_volts(chemistry);
        auto const curve = open_circuit_curve(battery, 25_degC);
        double worst = 0.0, slope = 0.0;
        for (int i = 1; i <= 1000; ++i) {
            auto const charge = -0.1 * i / 1000.0;
            auto const volts = open_circuit_voltage(battery, StateOfCharge::of(charge), 25_degC).value();
            worst = std::max(worst, std::abs(curve.at(charge) - volts));
            CHECK(curve.at(charge + 1e-4) - curve.at(charge) > slope - 1e-6);
            slope = curve.at(charge + 1e-4) - curve.at(charge);
        }
        CHECK(worst < 1e-5);
        CHECK(curve.at(-0.1) == doctest::Approx(10.5).epsilon(1e-9));
    }
}
