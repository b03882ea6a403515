#include "bankwright/solver/thevenin.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using doctest::Approx;

namespace {

// Node 1 is fed by 28 V behind 4 ohm and 7 V behind 1 ohm; node 0 is their common minus end.
Circuit two_batteries() {
    return {.nodes = 2, .branches = {{0, 1, 4.0, 28.0}, {0, 1, 1.0, 7.0}}, .joins = {}, .loads = {}, .reference = 0};
}

} // namespace

// Kuphaldt, Lessons In Electric Circuits, vol. I, ch. 10, Thevenin's and Norton's theorems [from memory]; by Millman's
// theorem (28/4 + 7/1) / (1/4 + 1/1) = 11.2 V.
TEST_CASE("the textbook's two batteries are 11.2 V behind 0.8 ohm, and 14 A flow into a short") {
    auto const source = thevenin(two_batteries(), {{1, 0}});
    REQUIRE(source.status == Status::solved);
    CHECK(source.open_volts[0] == Approx(11.2).epsilon(1e-14));
    CHECK(source.ohms[0] == Approx(0.8).epsilon(1e-14));
    auto shorted = two_batteries();
    shorted.joins.push_back({1, 0});
    CHECK(solve(shorted).join_amps[0] == Approx(source.open_volts[0] / source.ohms[0]).epsilon(1e-14));
}

// A T of 1, 2 and 3 ohm: Z11 = 1 + 3, Z22 = 2 + 3, Z12 = 3.
TEST_CASE("a T of resistances has its legs on the diagonal and its stem between the pairs") {
    Circuit const t{.nodes = 4,
                    .branches = {{0, 1, 1.0, 0.0}, {1, 2, 2.0, 0.0}, {1, 3, 3.0, 0.0}},
                    .joins = {},
                    .loads = {},
                    .reference = 3};
    auto const source = thevenin(t, {{0, 3}, {2, 3}});
    CHECK(source.ohm(0, 0) == Approx(4.0));
    CHECK(source.ohm(1, 1) == Approx(5.0));
    CHECK(source.ohm(0, 1) == Approx(3.0));
    CHECK(source.ohm(1, 0) == source.ohm(0, 1));
    auto const turned = thevenin(t, {{0, 3}, {3, 2}}); // the other pair with its ends exchanged
    CHECK(turned.ohm(0, 1) == Approx(-3.0));
}

// 12 V behind 1 ohm feeding 20 W: V^2 - 12 V + 20 = 0, V = 10 V and 2 A. Its tangent is -P / V^2 = -0.2 S beside 1 S.
TEST_CASE("a constant power makes the source softer, a constant current or a held load leaves it as it is") {
    Circuit c{.nodes = 2,
              .branches = {{0, 1, 1.0, 12.0}},
              .joins = {},
              .loads = {{1, 0, ConstantPower{20.0}}},
              .reference = 0};
    auto const softer = thevenin(c, {{1, 0}});
    CHECK(softer.open_volts[0] == Approx(10.0));
    CHECK(softer.ohms[0] == Approx(1.0 / 0.8));
    auto const held = thevenin(c, {{1, 0}}, LoadsDo::hold);
    CHECK(held.open_volts[0] == Approx(10.0));
    CHECK(held.ohms[0] == Approx(1.0));
    c.loads[0].law = LimitedSource{13.0, 5.0}; // delivers 1 A and holds its voltage
    CHECK(thevenin(c, {{1, 0}}).ohms[0] == Approx(0.0).epsilon(1e-12));
    c.loads[0].law = LimitedSource{20.0, 5.0}; // at its limit
    CHECK(thevenin(c, {{1, 0}}).ohms[0] == Approx(1.0));
}

TEST_CASE(
    "where no closed path joins a pair it is no source, and where its ends are one there is nothing between them") {
    Circuit const apart{
        .nodes = 5, .branches = {{0, 1, 1.0, 12.0}, {2, 3, 1.0, 12.0}}, .joins = {{1, 4}}, .loads = {}, .reference = 0};
    auto const source = thevenin(apart, {{1, 3}, {1, 4}, {3, 2}});
    CHECK(source.feeds[0] == Feed::none);
    CHECK(source.feeds[1] == Feed::shorted);
    CHECK(source.open_volts[1] == 0.0);
    CHECK(source.ohm(1, 1) == 0.0);
    CHECK(source.open_volts[2] == Approx(12.0));
    CHECK(source.ohm(2, 2) == Approx(1.0));
    CHECK(source.ohm(2, 0) == 0.0);
    CHECK_THROWS_AS(thevenin(apart, {{1, 5}}), std::invalid_argument);
}

TEST_CASE("a circuit without an operating point says so and is no source") {
    Circuit c = two_batteries();
    c.loads.push_back({1, 0, ConstantPower{1e3}}); // 11.2 V behind 0.8 ohm give 39.2 W
    auto const source = thevenin(c, {{1, 0}});
    CHECK(source.status == Status::no_operating_point);
    CHECK(source.ohms.empty());
    c.branches[0].resistance = 0.0;
    CHECK(thevenin(c, {{1, 0}}).status == Status::bad_circuit);
}
