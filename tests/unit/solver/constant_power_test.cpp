// Loads of constant power against answers worked out by hand, and how many steps it takes: Newton's method doubles the
// digits with every step, so that a dozen steps from rest are many. A wrong derivative finds the same answer slowly, or
// loses the curve.
#include "bankwright/solver/loads/port_loads.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

// `count` ports of 24 V, each behind 50 mohm, between any two of which an ampere at one changes the other by `mutual`.
Ports alike(std::size_t count, double mutual, double watts) {
    Ports ports;
    for (std::size_t p = 0; p < count; ++p) {
        ports.laws.push_back(ConstantPower{watts});
        ports.open_volts.push_back(24.0);
        for (std::size_t q = 0; q < count; ++q)
            ports.ohms.push_back(p == q ? 0.050 : mutual);
    }
    return ports;
}

double amps_of_one(double watts, double open_volts, double ohms) { // V^2 - V0 V + Z P = 0, the larger root
    return watts / (0.5 * open_volts + std::sqrt(0.25 * open_volts * open_volts - ohms * watts));
}

int constexpr most = 200;

} // namespace

TEST_CASE("loads that pull each other down settle in a few steps, the more the nearer to the fold") {
    for (std::size_t count : {2u, 3u, 6u}) {
        double const ohms = 0.050 + static_cast<double>(count - 1) * 0.020; // of one, with all alike drawing the same
        double const fold = 24.0 * 24.0 / (4.0 * ohms);
        for (double share : {0.01, 0.3, 0.7, 0.9, 0.99, 0.999}) {
            CAPTURE(count);
            CAPTURE(share);
            auto const found = port_currents(alike(count, 0.020, share * fold), most);
            REQUIRE(found.status == Status::solved);
            for (double amps : found.amps)
                CHECK(amps == doctest::Approx(amps_of_one(share * fold, 24.0, ohms)).epsilon(1e-13 / (1.0 - share)));
            // Toward the fold the digits double only from where the error is smaller than the distance; each halving
            // of the distance costs a step.
            CHECK(found.iterations <= 8 + std::ceil(0.5 * std::log2(1.0 / (1.0 - share))));
        }
    }
}

// With Z = [a, -b; -b, a] and equal powers both draw the same I. The slack is that of the two ways in which they can
// move, together and against each other: (V - (a - b) I) (V - (a + b) I) / V^2, which is zero first where V = (a + b)
// I: I = V0 / 2a, P = V0^2 (a + b) / 4a^2.
TEST_CASE("loads that lift each other are followed to where their curve folds") {
    double const a = 0.050, b = 0.015, fold = 24.0 * 24.0 * (a + b) / (4.0 * a * a);
    for (double share : {0.01, 0.3, 0.7, 0.9, 0.99, 0.999}) {
        CAPTURE(share);
        auto const found = port_currents(alike(2, -b, share * fold), most);
        REQUIRE(found.status == Status::solved);
        double const amps = amps_of_one(share * fold, 24.0, a - b), volts = 24.0 - (a - b) * amps;
        CHECK(found.amps[0] == doctest::Approx(amps).epsilon(1e-12));
        CHECK(found.amps[1] == doctest::Approx(amps).epsilon(1e-12));
        CHECK(found.slack ==
              doctest::Approx((volts - (a - b) * amps) * (volts - (a + b) * amps) / (volts * volts)).epsilon(1e-9));
        CHECK(found.iterations <=
              (share < 0.95 ? 12 : 24)); // the last two by a few steps along the curve, each with its correction
    }
    for (double share : {1.001, 1.2, 5.0}) {
        auto const none = port_currents(alike(2, -b, share * fold), most);
        CHECK(none.status == Status::no_operating_point);
        CHECK(none.reachable_share * share == doctest::Approx(1.0).epsilon(1e-8));
    }
}

TEST_CASE("what share the bank can give is found in few tries") {
    for (std::size_t count : {2u, 3u, 6u}) {
        double const ohms = 0.050 + static_cast<double>(count - 1) * 0.020, fold = 24.0 * 24.0 / (4.0 * ohms);
        for (double share : {1.0001, 1.1, 3.0, 100.0}) {
            auto const none = port_currents(alike(count, 0.020, share * fold), most);
            CHECK(none.status == Status::no_operating_point);
            CHECK(none.reachable_share * share == doctest::Approx(1.0).epsilon(1e-9));
            CHECK(none.iterations >= 34); // halvings to 1e-10
            CHECK(none.iterations <= 34 * 9);
        }
    }
}

// A battery of 15 V behind 0.1 ohm alone gives 562 W at most; a charger of 14.4 V takes over where its voltage falls to
// that, and the load asks for 3 kW. The way there leads through a state without an answer.
TEST_CASE(
    "a load beyond what the battery alone can give is found where the charger holds the voltage, or is at its limit") {
    for (double limit : {250.0, 400.0, 4000.0}) {
        Ports ports;
        ports.laws = {LimitedSource{14.4, limit}, ConstantPower{3000.0}};
        ports.open_volts = {15.0, 15.0};
        ports.ohms = {0.1, 0.1, 0.1, 0.1};
        auto const found = port_currents(ports, most);
        REQUIRE(found.status == Status::solved);
        CHECK(found.amps[1] == doctest::Approx(3000.0 / 14.4).epsilon(1e-12));
        CHECK(found.amps[0] == doctest::Approx((15.0 - 14.4) / 0.1 - 3000.0 / 14.4).epsilon(1e-12));
        CHECK(found.iterations <= 12);
    }
    for (double limit : {190.0, 200.0}) { // held at 14.4 V it would have to give 202 A, and where it gives all that it
                                          // can the voltage is above that
        Ports ports;
        ports.laws = {LimitedSource{14.4, limit}, ConstantPower{3000.0}};
        ports.open_volts = {15.0, 15.0};
        ports.ohms = {0.1, 0.1, 0.1, 0.1};
        CHECK(port_currents(ports, most).status == Status::no_operating_point);
    }
}

// A machine that pulls 1000 V down to about one, and 50 W beside it. A V2 draws c V^2, the load P / V: 1000 - V = c V^2
// + P / V, a cubic.
TEST_CASE("where rounding in the voltage keeps a load from its last digits, the search ends all the same") {
    double const c = 999.0;
    Ports ports;
    ports.laws = {SquareLaw{c, 0.0, 1.0}, ConstantPower{50.0}};
    ports.open_volts = {1000.0, 1000.0};
    ports.ohms = {1.0, 1.0, 1.0, 1.0};
    auto const found = port_currents(ports, most);
    REQUIRE(found.status == Status::solved);
    double const volts = 1000.0 - found.amps[0] - found.amps[1];
    CHECK(found.amps[0] == doctest::Approx(c * volts * volts).epsilon(1e-11));
    CHECK(found.amps[1] * volts == doctest::Approx(50.0).epsilon(1e-11));
    CHECK(found.iterations <= 15);
}
