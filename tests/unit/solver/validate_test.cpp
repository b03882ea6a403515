#include "bankwright/solver/solve.hpp"

#include <cmath>
#include <limits>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {
Circuit good() {
    return {.nodes = 3,
            .branches = {{0, 1, 0.01, 12.0}, {1, 2, 0.02, 0.0}},
            .joins = {},
            .loads = {{2, 0, ConstantCurrent{10.0}}},
            .reference = 0};
}
constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

void refused(Circuit const& circuit) {
    Solution const solution = solve(circuit);
    CHECK(solution.status == Status::bad_circuit);
    CHECK(solution.volts.empty());
}
} // namespace

TEST_CASE("a good circuit is solved") { CHECK(solve(good()).status == Status::solved); }

TEST_CASE("a node out of range is a bad circuit wherever it stands") {
    for (int node : {-1, 3, 1 << 30, std::numeric_limits<int>::min()}) {
        Circuit c = good();
        c.branches[0].from = node;
        refused(c);
        c = good();
        c.branches[1].to = node;
        refused(c);
        c = good();
        c.joins.push_back({node, 0});
        refused(c);
        c = good();
        c.joins.push_back({0, node});
        refused(c);
        c = good();
        c.loads[0].plus = node;
        refused(c);
        c = good();
        c.loads[0].minus = node;
        refused(c);
        c = good();
        c.reference = node;
        refused(c);
    }
    refused({});
    refused({.nodes = -5});
}

TEST_CASE("a resistance that is not positive and finite is a bad circuit") {
    for (double ohms : {0.0, -0.0, -1.0, infinite, -infinite, not_a_number, 1e-310}) {
        Circuit c = good();
        c.branches[0].resistance = ohms;
        refused(c);
    }
}

TEST_CASE("a number that is not finite is a bad circuit, and so is one outside its law") {
    Circuit c = good();
    c.branches[0].emf = not_a_number;
    refused(c);
    for (Law const& law :
         {Law(ConstantCurrent{infinite}), Law(ConstantCurrent{not_a_number}), Law(ConstantPower{-1.0}),
          Law(ConstantPower{not_a_number}), Law(ConstantPower{infinite}), Law(SquareLaw{-1.0, 0.0, 1.0}),
          Law(SquareLaw{1.0, -1.0, 1.0}), Law(SquareLaw{1.0, 0.0, 1.1}), Law(SquareLaw{1.0, 0.0, -0.1}),
          Law(SquareLaw{not_a_number, 0.0, 1.0}), Law(SquareLaw{1.0, infinite, 1.0}),
          Law(SquareLaw{1.0, 0.0, not_a_number}), Law(LimitedSource{not_a_number, 1.0}), Law(LimitedSource{14.0, 0.0}),
          Law(LimitedSource{14.0, -1.0}), Law(LimitedSource{14.0, infinite})}) {
        c = good();
        c.loads[0].law = law;
        refused(c);
    }
}

TEST_CASE("numbers at the edge of what a double holds end in a status and never in a number that is not finite") {
    for (double ohms : {1e-300, 1e-150, 1e150, 1e300})
        for (double other : {1e-300, 1.0, 1e300})
            for (double emf : {0.0, 1e-300, 1.0, 1e300}) {
                Circuit c = good();
                c.branches[0] = {0, 1, ohms, emf};
                c.branches[1].resistance = other;
                c.branches.push_back({0, 2, ohms, -emf});
                for (Law const& law :
                     {Law(ConstantCurrent{1e300}), Law(ConstantPower{1e300}), Law(ConstantPower{1e-300}),
                      Law(SquareLaw{1e300, 1e-300, 1.0}), Law(LimitedSource{1e300, 1e-300})}) {
                    c.loads[0].law = law;
                    Solution const s = solve(c);
                    if (s.status != Status::solved) continue;
                    for (auto const* list : {&s.volts, &s.branch_amps, &s.join_amps, &s.load_amps})
                        for (double x : *list)
                            CHECK(std::isfinite(x));
                    CHECK(std::isfinite(s.residual));
                    CHECK(std::isfinite(s.power_imbalance));
                    CHECK(std::isfinite(s.condition));
                }
            }
}
