#include "bankwright/solver/lanes/port_lanes.hpp"

#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

// Two ports with laws of one kind, a little more of each in every next lane.
int settled_together(Law const& kind, std::vector<double> const& first, std::vector<double> const& second, int used,
                     double mutual = 0.005) {
    PortLanes ports(2);
    auto const rows = [&](std::vector<double> const& numbers) {
        std::vector<double> filled;
        for (double number : numbers)
            for (int lane = 0; lane < lanes; ++lane)
                filled.push_back(number * (1.0 + 0.01 * lane));
        return filled;
    };
    auto const one = rows(first), other = rows(second);
    for (int lane = 0; lane < lanes; ++lane) {
        ports.open_volts(0)[lane] = 38.0;
        ports.open_volts(1)[lane] = 12.6;
        ports.ohms(0, 0)[lane] = 0.030;
        ports.ohms(0, 1)[lane] = ports.ohms(1, 0)[lane] = mutual;
        ports.ohms(1, 1)[lane] = 0.012;
    }
    ports.set_law(0, kind, one.data());
    ports.set_law(1, kind, other.data());
    int const together = ports.find_currents(used);
    for (int lane = 0; lane < used; ++lane) { // Ohm's law at both ports, and each load's own
        CHECK_FALSE(ports.is_lost(lane));
        double const a = ports.amps(0)[lane], b = ports.amps(1)[lane];
        double const u = 38.0 - 0.030 * a - mutual * b, v = 12.6 - mutual * a - 0.012 * b;
        auto const more = 1.0 + 0.01 * lane;
        if (std::holds_alternative<ConstantPower>(kind)) {
            CHECK(a * u == doctest::Approx(first[0] * more).epsilon(1e-12));
            CHECK(b * v == doctest::Approx(second[0] * more).epsilon(1e-12));
        }
    }
    return together;
}

} // namespace

TEST_CASE("two constant powers settle together in all lanes that are used") {
    CHECK(settled_together(ConstantPower{}, {1200.0}, {150.0}, lanes) == lanes);
    CHECK(settled_together(ConstantPower{}, {1200.0}, {150.0}, 5) == 5);
    CHECK(settled_together(ConstantPower{}, {1.0}, {900.0}, 1) == 1);
}

// 38 V behind 0.030 ohm can give 12.0 kW at most, 12.6 V behind 0.012 ohm 3.3 kW. From 70 % of that Newton needs eight
// steps, since each doubles the digits; a step that is not Newton's gains less than a digit, and the steps that lanes
// are given together run out.
TEST_CASE("constant powers near what the bank can give still settle together") {
    CHECK(settled_together(ConstantPower{}, {7000.0}, {500.0}, lanes) == lanes);
    CHECK(settled_together(ConstantPower{}, {600.0}, {2000.0}, lanes) == lanes);
    CHECK(settled_together(ConstantPower{}, {4000.0}, {1200.0}, lanes) == lanes);
}

// What is lost at one port is nearly all lost at the other too: a step that takes one of them alone gains little.
TEST_CASE("loads behind one long lead settle together") {
    CHECK(settled_together(ConstantPower{}, {7000.0}, {700.0}, lanes, 0.0115) == lanes);
    CHECK(settled_together(SquareLaw{}, {5.0, 0.0, 1.0}, {20.0, 0.0, 1.0}, lanes, 0.0115) == lanes);
}

// An ampere here that lifts the voltage there belongs to another method.
TEST_CASE("powers that lift each other are settled one by one") {
    CHECK(settled_together(ConstantPower{}, {1200.0}, {150.0}, lanes, -0.002) == 0);
    CHECK(settled_together(SquareLaw{}, {0.05, 0.02, 0.7}, {0.2, 0.01, 0.8}, lanes, -0.002) == lanes);
}

TEST_CASE("two motors settle together in all lanes that are used") {
    CHECK(settled_together(SquareLaw{}, {0.05, 0.02, 0.7}, {0.2, 0.01, 0.8}, lanes) == lanes);
    CHECK(settled_together(SquareLaw{}, {0.05, 0.02, 0.7}, {0.2, 0.01, 0.8}, 3) == 3);
    CHECK(settled_together(SquareLaw{}, {5.0, 0.02, 0.7}, {20.0, 0.01, 0.8}, lanes) ==
          lanes); // most of the voltage is lost on the way
}
