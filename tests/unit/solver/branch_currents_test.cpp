#include "bankwright/solver/currents/branch_currents.hpp"
#include "support/random_circuits.hpp"

#include <cmath>
#include <limits>

#include <doctest/doctest.h>

using namespace bankwright::solver;

TEST_CASE("what is left between two voltages and a source is rounded once, however little it is") {
    __extension__ typedef __float128 Quad; // adds three doubles of one size without rounding
    random_circuits::Dice dice(6);
    for (int i = 0; i < 20'000; ++i) {
        double const to = dice.between(-60.0, 60.0), emf = dice.chance(0.3) ? 0.0 : dice.between(-15.0, 15.0);
        double const near = dice.log_between(1e-18, 1.0); // to what the source would hold
        double const from = dice.chance(0.3) ? dice.between(-60.0, 60.0) : to - emf + (dice.chance(0.5) ? near : -near);
        Quad const exact = Quad(from) - Quad(to) + Quad(emf);
        Quad const off = Quad(drop(from, to, emf)) - exact;
        double const size = std::abs(static_cast<double>(exact)), ulp = std::nextafter(size, HUGE_VAL) - size;
        CAPTURE(from);
        CAPTURE(to);
        CAPTURE(emf);
        CHECK(std::abs(static_cast<double>(off)) <= 0.5000001 * ulp); // the nearest double, but for a tie
    }
}
