#include "bankwright/solver/sensitivities.hpp"

#include <cmath>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using doctest::Approx;

namespace {

// 10 V, a over b: the middle (node 1) stands at 10 b / (a + b).
Circuit divider(double a, double b) {
    return {.nodes = 3,
            .branches = {{0, 2, 1.0, 10.0}, {2, 1, a, 0.0}, {1, 0, b, 0.0}},
            .joins = {},
            .loads = {},
            .reference = 0};
}

} // namespace

// V = e b / s with s = r + a + b: dV/de = b / s, dV/db = e (s - b) / s^2, dV/da = dV/dr = -e b / s^2.
TEST_CASE("a divider changes with its emf and resistances as its formula says") {
    auto const found = sensitivities(divider(3.0, 4.0), {{Gauge::node_volts, 1}, {Gauge::branch_amps, 2}});
    REQUIRE(found.status == Status::solved);
    auto const& volts = found.gauges[0];
    CHECK(volts.reading == Approx(5.0));
    CHECK(volts.to_emf[0] == Approx(0.5));
    CHECK(volts.to_resistance[0] == Approx(-40.0 / 64.0));
    CHECK(volts.to_resistance[1] == Approx(-40.0 / 64.0));
    CHECK(volts.to_resistance[2] == Approx(40.0 / 64.0));
    auto const& amps = found.gauges[1]; // e / s
    CHECK(amps.reading == Approx(1.25));
    CHECK(amps.to_emf[0] == Approx(0.125));
    for (int b = 0; b < 3; ++b)
        CHECK(amps.to_resistance[static_cast<std::size_t>(b)] == Approx(-10.0 / 64.0));
}

TEST_CASE("a conductor that leads nowhere moves nothing, exactly") {
    Circuit c = divider(1e-9, 4.0);
    c.nodes = 4;
    c.branches.push_back({1, 3, 1e-9, 0.0});
    auto const found = sensitivities(c, {{Gauge::node_volts, 3}, {Gauge::branch_amps, 3}, {Gauge::branch_amps, 0}});
    CHECK(found.gauges[0].to_resistance[3] == 0.0);
    CHECK(found.gauges[0].to_emf[3] == Approx(1.0));
    for (double s : found.gauges[1].to_emf)
        CHECK(s == 0.0);
    CHECK(found.gauges[2].to_emf[3] == 0.0);
}

// V^2 - e V + r P = 0 at e = 12 V, r = 1 ohm, P = 20 W: V = 10 V, dV = (V de - P dr - r dP) / (2 V - e).
TEST_CASE("a constant power is followed along its law") {
    Circuit const c{.nodes = 2,
                    .branches = {{0, 1, 1.0, 12.0}},
                    .joins = {},
                    .loads = {{1, 0, ConstantPower{20.0}}},
                    .reference = 0};
    auto const found = sensitivities(c, {{Gauge::span_volts, 1, 0}});
    CHECK(found.gauges[0].to_emf[0] == Approx(10.0 / 8.0));
    CHECK(found.gauges[0].to_resistance[0] == Approx(-20.0 / 8.0));
    CHECK(found.gauges[0].to_load[0][0] == Approx(-1.0 / 8.0));
}

TEST_CASE("a charger that holds its voltage sets it, one at its limit moves it by its amperes") {
    Circuit c{.nodes = 2,
              .branches = {{0, 1, 2.0, 12.0}},
              .joins = {},
              .loads = {{1, 0, LimitedSource{13.0, 5.0}}},
              .reference = 0};
    auto holds = sensitivities(c, {{Gauge::node_volts, 1}, {Gauge::branch_amps, 0}});
    CHECK(holds.gauges[0].to_load[0][0] == Approx(1.0));
    CHECK(holds.gauges[0].to_load[0][1] == 0.0);
    CHECK(holds.gauges[0].to_emf[0] == Approx(0.0).epsilon(1e-12));
    CHECK(holds.gauges[1].to_emf[0] == Approx(0.5)); // the battery takes (13 - e) / r
    c.loads[0].law = LimitedSource{30.0, 5.0};
    auto full = sensitivities(c, {{Gauge::node_volts, 1}});
    CHECK(full.gauges[0].reading == Approx(22.0));
    CHECK(full.gauges[0].to_load[0][0] == 0.0);
    CHECK(full.gauges[0].to_load[0][1] == Approx(2.0));
}

TEST_CASE("a gauge that cannot be read throws, and a circuit that cannot be solved says so") {
    Circuit c = divider(3.0, 4.0);
    c.nodes = 4; // one node alone
    CHECK_THROWS_AS(sensitivities(c, {{Gauge::node_volts, 4}}), std::invalid_argument);
    CHECK_THROWS_AS(sensitivities(c, {{Gauge::branch_amps, 3}}), std::invalid_argument);
    CHECK_THROWS_AS(sensitivities(c, {{Gauge::span_volts, 1, 3}}), std::invalid_argument);
    CHECK(sensitivities(c, {{Gauge::node_volts, 3}}).gauges[0].reading == 0.0); // its own island's zero
    c.branches[0].resistance = -1.0;
    CHECK(sensitivities(c, {{Gauge::node_volts, 1}}).status == Status::bad_circuit);
}
