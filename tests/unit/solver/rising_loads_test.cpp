#include "bankwright/solver/loads/rising_loads.hpp"

#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright::solver;

// c V^2 draws from V0 behind 1 ohm: V + c V^2 = V0, a quadratic. Newton's method doubles the digits with every step;
// where V is a thousandth of V0 rounding is that of V0, and nothing more is tried than that can tell.
TEST_CASE("a machine that takes nearly all of the voltage settles in a few steps") {
    for (double c : {0.01, 1.0, 10.0, 999.0, 1e6}) {
        Ports ports;
        ports.laws = {SquareLaw{c, 0.0, 1.0}};
        ports.open_volts = {1000.0};
        ports.ohms = {1.0};
        auto const settled = settle(ports, {0}, {}, {}, {});
        double const volts = (std::sqrt(1.0 + 4.0 * c * 1000.0) - 1.0) / (2.0 * c);
        CAPTURE(c);
        CHECK(settled.converged);
        CHECK(settled.rising_amps[0] == doctest::Approx(c * volts * volts).epsilon(1e-12));
        CHECK(settled.iterations <= 25); // the first ones halve the voltage, down to 30 mV
    }
}

// Two machines on one lead of 0.1 ohm, each c V^2: together 2 c V^2.
TEST_CASE("two machines on one lead settle as one of twice the size") {
    Ports ports;
    ports.laws = {SquareLaw{0.5, 0.0, 1.0}, SquareLaw{0.5, 0.0, 1.0}};
    ports.open_volts = {24.0, 24.0};
    ports.ohms = {0.1, 0.1, 0.1, 0.1};
    auto const settled = settle(ports, {0, 1}, {}, {}, {});
    double const volts = (std::sqrt(1.0 + 4.0 * 0.1 * 24.0) - 1.0) / (2.0 * 0.1);
    CHECK(settled.converged);
    for (double amps : settled.rising_amps)
        CHECK(amps == doctest::Approx(0.5 * volts * volts).epsilon(1e-12));
    CHECK(settled.iterations <= 15);
}

// 14.4 V across a battery of 12 V behind 50 mohm asks for 48 A; 48 A of 20 A are not to be had.
TEST_CASE("a charger holds its voltage, gives what it can, or nothing") {
    for (double limit : {20.0, 60.0}) {
        Ports ports;
        ports.laws = {LimitedSource{14.4, limit}, ConstantPower{1.0}};
        ports.open_volts = {12.0, 12.0};
        ports.ohms = {0.05, 0.05, 0.05, 0.06};
        auto const settled = settle(ports, {0}, {1}, {10.0}, {});
        REQUIRE(settled.converged);
        bool const full = limit < 58.0; // 48 A for the battery and 10 A for what is driven
        CHECK(settled.limits[0] == (full ? Limit::full : Limit::between));
        CHECK(settled.rising_amps[0] == doctest::Approx(full ? -limit : -58.0).epsilon(1e-12));
        CHECK(settled.driven_volts[0] == doctest::Approx(12.0 - 0.06 * 10.0 - 0.05 * settled.rising_amps[0]));
        CHECK(settled.driven_ohms[0] ==
              doctest::Approx(full ? 0.06 : 0.01)); // behind a voltage that is held only its own lead is left
    }
    Ports ports;
    ports.laws = {LimitedSource{14.4, 20.0}};
    ports.open_volts = {15.0};
    ports.ohms = {0.05};
    auto const off = settle(ports, {0}, {}, {}, {});
    CHECK(off.limits[0] == Limit::off);
    CHECK(off.rising_amps[0] == 0.0);
}
