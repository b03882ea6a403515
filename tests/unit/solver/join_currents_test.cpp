#include "bankwright/solver/currents/forest_currents.hpp"
#include "bankwright/solver/join_currents.hpp"
#include "bankwright/solver/solve.hpp"

#include <doctest/doctest.h>

using namespace bankwright::solver;
using doctest::Approx;

TEST_CASE("along a chain the law of currents settles everything, whichever way a line is drawn") {
    std::vector<double> leaving{-7.0, 2.0, 0.0, 5.0};
    ForestCurrents const found = forest_currents(4, {{0, 1}, {2, 1}, {2, 3}, {3, 3}}, leaving);
    CHECK(found.amps == std::vector<double>{7.0, -5.0, 5.0, 0.0});
    CHECK(found.settled == std::vector<char>{1, 1, 1, 1});
}

TEST_CASE("a ring is left open and its tails are settled") {
    std::vector<double> leaving{-1.0, 0.0, 0.0, 1.0};
    ForestCurrents const found = forest_currents(4, {{0, 1}, {1, 2}, {2, 0}, {2, 3}}, leaving);
    CHECK(found.settled == std::vector<char>{0, 0, 0, 1});
    CHECK(found.amps[3] == 1.0);
    CHECK(leaving == std::vector<double>{-1.0, 0.0, 1.0, 0.0});
}

TEST_CASE("two joins side by side share evenly, a third that is twice as long carries half of one") {
    Circuit const c{.nodes = 3, .joins = {{0, 1}, {1, 0}, {0, 2}, {2, 1}}};
    for (int limit : {500, 0}) {
        auto const amps = join_currents(c, {-10.0, 10.0, 0.0}, limit); // 1 : 1 : 1/2 of conductance
        CHECK(amps[0] == Approx(4.0));
        CHECK(amps[1] == Approx(-4.0));
        CHECK(amps[2] == Approx(2.0));
        CHECK(amps[3] == Approx(2.0));
    }
}

TEST_CASE("a join from a node to itself carries nothing") {
    CHECK(join_currents({.nodes = 1, .joins = {{0, 0}}}, {0.0}, 500) == std::vector<double>{0.0});
}

TEST_CASE("a battery shorted by a join pushes its short-circuit current through it") {
    Circuit const c{.nodes = 2, .branches = {{0, 1, 0.01, 12.0}}, .joins = {{1, 0}}};
    Solution const s = solve(c);
    REQUIRE(s.status == Status::solved);
    CHECK(s.branch_amps[0] == Approx(1200.0));
    CHECK(s.join_amps[0] == Approx(1200.0));
    CHECK(s.volts[1] == 0.0);
    CHECK(s.residual == 0.0);
}
