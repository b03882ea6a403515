#include "bankwright/solver/solve.hpp"

#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using doctest::Approx;

namespace {
// One battery, node 0 negative, node 1 positive.
Circuit battery(double emf, double ohms, std::vector<Load> loads) {
    return {.nodes = 2, .branches = {{0, 1, ohms, emf}}, .joins = {}, .loads = std::move(loads), .reference = 0};
}
} // namespace

TEST_CASE("a battery that feeds a constant current sags by its resistance") {
    Solution const s = solve(battery(12.8, 0.005, {{1, 0, ConstantCurrent{100.0}}}));
    REQUIRE(s.status == Status::solved);
    CHECK(s.volts[1] == Approx(12.3).epsilon(1e-15));
    CHECK(s.branch_amps[0] == 100.0);
    CHECK(s.load_amps[0] == 100.0);
    CHECK(s.condition == Approx(1.0));
}

TEST_CASE("a battery that leads nowhere carries exactly nothing") {
    Circuit c = battery(12.8, 0.005, {});
    c.nodes = 4;
    c.branches.push_back({1, 2, 1e-6, 12.7});
    c.branches.push_back({2, 3, 33.0, -12.3});
    Solution const s = solve(c);
    REQUIRE(s.status == Status::solved);
    for (double amps : s.branch_amps)
        CHECK(amps == 0.0);
    CHECK(s.volts[3] == Approx(13.2));
    CHECK(s.residual == 0.0);
}

TEST_CASE("an island without the reference counts from its own lowest node") {
    Circuit c = battery(12.0, 0.1, {});
    c.nodes = 5;
    c.branches.push_back({4, 3, 0.1, 6.0});
    c.branches.push_back({3, 4, 0.2, 0.0});
    Solution const s = solve(c);
    REQUIRE(s.status == Status::solved);
    CHECK(s.island == std::vector<int>{0, 0, 1, 2, 2});
    CHECK(s.volts[3] == 0.0);
    CHECK(s.volts[4] == Approx(-4.0));
    CHECK(s.branch_amps[1] == Approx(20.0));
    CHECK(s.volts[2] == 0.0);
}

TEST_CASE("loads that no closed path feeds carry nothing, also in series with each other") {
    for (Law const& law : {Law(ConstantCurrent{5.0}), Law(ConstantPower{50.0}), Law(SquareLaw{0.1, 0.0, 1.0}),
                           Law(LimitedSource{14.0, 10.0})}) {
        Circuit c = battery(12.0, 0.1, {{1, 2, law}, {2, 0, law}, {3, 2, law}});
        c.nodes = 4;
        Solution const s = solve(c);
        REQUIRE(s.status == Status::solved);
        CHECK(s.load_amps == std::vector<double>{0.0, 0.0, 0.0});
        CHECK(s.branch_amps[0] == 0.0);
    }
}

TEST_CASE("a shorted load carries nothing, a shorted charger delivers its limit into the short") {
    Circuit c = battery(12.0, 0.1,
                        {{1, 2, ConstantCurrent{5.0}},
                         {2, 1, ConstantPower{9.0}},
                         {1, 2, SquareLaw{1.0, 0.0, 1.0}},
                         {1, 2, LimitedSource{14.0, 10.0}}});
    c.nodes = 3;
    c.joins = {{2, 1}};
    Solution const s = solve(c);
    REQUIRE(s.status == Status::solved);
    CHECK(s.load_amps == std::vector<double>{0.0, 0.0, 0.0, -10.0});
    CHECK(s.join_amps[0] == -10.0);
    CHECK(s.residual == 0.0);
}

TEST_CASE("a branch from a node to itself carries its source over its resistance") {
    Circuit c = battery(12.0, 0.1, {});
    c.branches.push_back({1, 1, 0.5, 3.0});
    Solution const s = solve(c);
    REQUIRE(s.status == Status::solved);
    CHECK(s.branch_amps[1] == 6.0);
    CHECK(s.power_imbalance == Approx(0.0));
}

TEST_CASE("of the two answers to constant power the one with the higher voltage is given") {
    // V^2 - 12 V + 0.5 * 40 = 0: 10 V and 2 V
    Solution const s = solve(battery(12.0, 0.5, {{1, 0, ConstantPower{40.0}}}));
    REQUIRE(s.status == Status::solved);
    CHECK(s.volts[1] == Approx(10.0).epsilon(1e-15));
    CHECK(s.load_amps[0] == Approx(4.0).epsilon(1e-15));
}

TEST_CASE("the most a battery can give is E^2 / 4 R, and just that much is still an operating point") {
    for (double emf : {11.2, 12.8, 50.4})
        for (double ohms : {0.8, 0.0123, 3e-5}) {
            double const most = emf * emf / (4.0 * ohms);
            CHECK(solve(battery(emf, ohms, {{1, 0, ConstantPower{most}}})).status == Status::solved);
            Solution const s = solve(battery(emf, ohms, {{1, 0, ConstantPower{1.25 * most}}}));
            CHECK(s.status == Status::no_operating_point);
            CHECK(s.reachable_share == Approx(0.8).epsilon(1e-14));
            CHECK(s.load_amps.empty());
            CHECK(s.volts.empty());
        }
}

TEST_CASE("two constant powers on one pair of posts are one") {
    Solution const s = solve(battery(12.0, 0.5, {{1, 0, ConstantPower{30.0}}, {1, 0, ConstantPower{10.0}}}));
    REQUIRE(s.status == Status::solved);
    CHECK(s.volts[1] == Approx(10.0).epsilon(1e-13));
    CHECK(s.load_amps[0] == Approx(3.0).epsilon(1e-13));
    Solution const none = solve(battery(12.0, 0.5, {{1, 0, ConstantPower{70.0}}, {1, 0, ConstantPower{20.0}}}));
    CHECK(none.status == Status::no_operating_point);
    CHECK(none.reachable_share == Approx(0.8).epsilon(1e-9));
}

TEST_CASE("constant power draws nothing where its voltage is reversed, constant current does not care") {
    Solution const s = solve(battery(12.0, 0.5, {{0, 1, ConstantPower{40.0}}}));
    REQUIRE(s.status == Status::solved);
    CHECK(s.load_amps[0] == 0.0);
    Solution const forced = solve(battery(12.0, 0.5, {{0, 1, ConstantCurrent{4.0}}}));
    CHECK(forced.volts[1] == Approx(14.0));
    Solution const beyond = solve(battery(12.0, 0.5, {{1, 0, ConstantCurrent{40.0}}}));
    CHECK(beyond.volts[1] == Approx(-8.0));
}

TEST_CASE("a reversed constant power wakes when a charger turns its voltage") {
    Solution const s = solve(battery(0.0, 1.0, {{1, 0, ConstantPower{14.0}}, {1, 0, LimitedSource{14.0, 30.0}}}));
    REQUIRE(s.status == Status::solved);
    CHECK(s.volts[1] == Approx(14.0).epsilon(1e-14));
    CHECK(s.load_amps[0] == Approx(1.0).epsilon(1e-13));
    CHECK(s.load_amps[1] == Approx(-15.0).epsilon(1e-13));
}

TEST_CASE("a square law settles where the machine's equation and the battery's meet") {
    // E = 10, c E^2 = 50 A, drop in the machine 50 * 0.02 = 1 V, so 11 V at the posts; battery 12 V less 50 * 0.02
    Solution const s = solve(battery(12.0, 0.02, {{1, 0, SquareLaw{0.5, 0.02, 1.0}}}));
    REQUIRE(s.status == Status::solved);
    CHECK(s.volts[1] == Approx(11.0).epsilon(1e-14));
    CHECK(s.load_amps[0] == Approx(50.0).epsilon(1e-14));
    CHECK(solve(battery(12.0, 0.02, {{0, 1, SquareLaw{0.5, 0.02, 1.0}}})).load_amps[0] == 0.0);
}

TEST_CASE("a charger is off above its voltage, holds it, or gives its limit below it") {
    auto const charge = [](double emf) { return solve(battery(emf, 0.1, {{1, 0, LimitedSource{14.0, 10.0}}})); };
    CHECK(charge(14.5).load_amps[0] == 0.0);
    CHECK(charge(13.5).load_amps[0] == Approx(-5.0));
    CHECK(charge(13.5).volts[1] == Approx(14.0).epsilon(1e-15));
    CHECK(charge(12.0).load_amps[0] == -10.0);
    CHECK(charge(12.0).volts[1] == Approx(13.0).epsilon(1e-15));
    for (double edge : {14.0, 13.0})
        CHECK(charge(edge).status == Status::solved);
}

TEST_CASE("equal chargers on one pair of posts share evenly, of unequal ones the higher works first") {
    Solution const even =
        solve(battery(13.5, 0.1, {{1, 0, LimitedSource{14.0, 10.0}}, {1, 0, LimitedSource{14.0, 10.0}}}));
    REQUIRE(even.status == Status::solved);
    CHECK(even.load_amps[0] == Approx(-2.5).epsilon(1e-9));
    CHECK(even.load_amps[1] == Approx(-2.5).epsilon(1e-9));
    Solution const uneven =
        solve(battery(13.5, 0.1, {{1, 0, LimitedSource{13.9, 10.0}}, {1, 0, LimitedSource{14.0, 10.0}}}));
    CHECK(uneven.load_amps[0] == 0.0);
    CHECK(uneven.load_amps[1] == Approx(-5.0));
    Solution const both =
        solve(battery(12.6, 0.1, {{1, 0, LimitedSource{13.9, 10.0}}, {1, 0, LimitedSource{14.0, 10.0}}}));
    CHECK(both.load_amps[0] == Approx(-3.0));
    CHECK(both.load_amps[1] == -10.0);
}

TEST_CASE("power beyond what the battery has is found where a charger carries it") {
    // From 12 V behind 10 ohm 3.6 W can be had, at 6 V. A charger of 4 V holds 4 V, below that fold, up to 20 A: 30 W
    // is no answer on the battery's part of the curve, and one on the charger's.
    Solution const s = solve(battery(12.0, 10.0, {{1, 0, ConstantPower{30.0}}, {1, 0, LimitedSource{4.0, 20.0}}}));
    REQUIRE(s.status == Status::solved);
    CHECK(s.volts[1] == Approx(4.0).epsilon(1e-13));
    CHECK(s.load_amps[0] == Approx(7.5).epsilon(1e-13));
    CHECK(s.load_amps[1] == Approx(-6.7).epsilon(1e-13));
    // The most: at 4 V the charger's 20 A and the battery's 0.8 A, 83.2 W.
    Solution const none = solve(battery(12.0, 10.0, {{1, 0, ConstantPower{166.4}}, {1, 0, LimitedSource{4.0, 20.0}}}));
    REQUIRE(none.status == Status::no_operating_point);
    CHECK(none.reachable_share == Approx(0.5).epsilon(1e-8));
}

TEST_CASE("the topology made once serves other numbers on the same wiring") {
    Circuit c = battery(12.0, 0.5, {{1, 0, ConstantPower{40.0}}});
    Topology const t = topology(c);
    c.branches[0].emf = 15.0;
    c.loads[0].law = ConstantCurrent{10.0};
    CHECK(solve(c, t).volts[1] == Approx(10.0));
    CHECK(solve(c, t).volts == solve(c).volts);
}

TEST_CASE("the condition number of two unequal resistances to the reference is their ratio") {
    Circuit const c{.nodes = 3, .branches = {{0, 1, 1e-3, 0.0}, {0, 2, 10.0, 0.0}}};
    for (int limit : {500, 0})
        CHECK(solve(c, {.star_mesh_limit = limit}).condition == Approx(1e4));
    CHECK(solve({.nodes = 1}).condition == 1.0);
    CHECK(solve({.nodes = 1}).status == Status::solved);
}

TEST_CASE("a pack of ten thousand cells is solved by the sparse method and balances") {
    int const series = 100, parallel = 100;
    auto const node = [&](int rank, int column) { return rank * parallel + column; };
    Circuit c{.nodes = (series + 1) * parallel};
    for (int r = 0; r < series; ++r)
        for (int k = 0; k < parallel; ++k)
            c.branches.push_back({node(r, k), node(r + 1, k), 0.02 + 1e-5 * ((r * 31 + k * 17) % 100), 3.3});
    for (int r = 0; r <= series; ++r)
        for (int k = 1; k < parallel; ++k)
            c.branches.push_back({node(r, k - 1), node(r, k), 5e-5, 0.0});
    c.loads = {{node(series, parallel - 1), 0, ConstantCurrent{100.0}}};
    Solution const s = solve(c);
    REQUIRE(s.status == Status::solved);
    double bottom = 0.0;
    for (int k = 0; k < parallel; ++k)
        bottom += s.branch_amps[static_cast<std::size_t>(k)];
    CHECK(bottom == Approx(100.0).epsilon(1e-12));
    CHECK(s.residual < 1e-11);
    CHECK(std::abs(s.power_imbalance) < 1e-9 * 33000.0);
}
