#include "bankwright/solver/linear/pack_network.hpp"
#include "bankwright/solver/linear/star_mesh.hpp"
#include "bankwright/solver/solve.hpp"
#include "support/cell_packs.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <memory>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using cell_packs::node;

namespace {

constexpr SolveOptions iterated{.star_mesh_limit = 0, .factor_limit = 0};
constexpr SolveOptions factored{.star_mesh_limit = 0, .factor_limit = 1'000'000};

// Rows and columns: some thousand cells, or a hundred thousand where asked for.
int side() { return std::getenv("BANKWRIGHT_LARGE_PACKS") ? 320 : 60; }

double worst_volts(Solution const& a, Solution const& b) { // relative to the largest
    double largest = 0.0, worst = 0.0;
    for (std::size_t n = 0; n < a.volts.size(); ++n) {
        largest = std::max(largest, std::abs(b.volts[n]));
        worst = std::max(worst, std::abs(a.volts[n] - b.volts[n]));
    }
    return worst / largest;
}

double worst_amps(Solution const& a, Solution const& b) {
    double largest = 0.0, worst = 0.0;
    for (std::size_t i = 0; i < a.branch_amps.size(); ++i) {
        largest = std::max(largest, std::abs(b.branch_amps[i]));
        worst = std::max(worst, std::abs(a.branch_amps[i] - b.branch_amps[i]));
    }
    return worst / largest;
}

} // namespace

TEST_CASE("a pack of cells all alike obeys Ohm's law cell by cell") {
    int const n = side();
    constexpr double amperes = 2.5;
    Solution const s = solve(cell_packs::alike(n, n, amperes), iterated);
    REQUIRE(s.status == Status::solved);
    double worst = 0.0, worst_cell = 0.0, busbars = 0.0;
    for (int row = 0; row <= n; ++row)
        for (int column = 0; column < n; ++column) // each row of cells gives 3.7 V less 20 mohm times 2.5 A
            worst = std::max(worst, std::abs(s.volts[static_cast<std::size_t>(node(row, column, n))] -
                                             row * (3.7 - 0.020 * amperes)));
    for (int i = 0; i < n * n; ++i)
        worst_cell = std::max(worst_cell, std::abs(s.branch_amps[static_cast<std::size_t>(i)] - amperes));
    for (std::size_t i = static_cast<std::size_t>(n * n); i < s.branch_amps.size(); ++i)
        busbars = std::max(busbars, std::abs(s.branch_amps[i]));
    CHECK(worst < 1e-13 * n * 3.65);
    CHECK(worst_cell < 1e-9);
    CHECK(busbars < 1e-7); // 50 uohm turn the last digit of the volts into some 1e-9 A
}

TEST_CASE("a pack of a thousand-millionth of the voltage is the same pack, to the last bit") { // a power of two
    constexpr double k = 0x1p-30;
    random_circuits::Dice dice(8);
    Circuit const pack = cell_packs::drawn(40, 40, dice);
    Circuit faint = pack;
    for (Branch& b : faint.branches)
        b.emf *= k;
    faint.loads.front().law = ConstantCurrent{std::get<ConstantCurrent>(pack.loads.front().law).amperes * k};
    Solution const s = solve(pack, iterated), t = solve(faint, iterated);
    REQUIRE(s.status == Status::solved);
    REQUIRE(t.status == Status::solved);
    for (std::size_t n = 0; n < s.volts.size(); ++n)
        CHECK(t.volts[n] / k == s.volts[n]);
}

TEST_CASE("a bad cell changes a pack as the superposition of its missing voltage") {
    int const n = side();
    random_circuits::Dice dice(1);
    Circuit const good = cell_packs::drawn(n, n, dice);
    auto const bad_cell = static_cast<std::size_t>(node(n / 3, n / 2, n));
    Circuit bad = good, alone = good;
    bad.branches[bad_cell].emf = 0.2;
    for (Branch& b : alone.branches)
        b.emf = 0.0;
    alone.loads.clear();
    alone.branches[bad_cell].emf = 0.2 - good.branches[bad_cell].emf;
    Solution const with_good = solve(good, iterated), with_bad = solve(bad, iterated), change = solve(alone, iterated);
    double worst = 0.0;
    for (std::size_t i = 0; i < with_bad.volts.size(); ++i)
        worst = std::max(worst, std::abs(with_bad.volts[i] - with_good.volts[i] - change.volts[i]));
    CHECK(worst < 1e-12 * 3.7 * n);
    CHECK(with_bad.branch_amps[bad_cell] - with_good.branch_amps[bad_cell] ==
          doctest::Approx(change.branch_amps[bad_cell]).epsilon(1e-9));
    CHECK(change.branch_amps[bad_cell] < -1.0); // its neighbors charge it
}

TEST_CASE("what a pack's one cell does to another, that one does to it") { // reciprocity
    int const n = side();
    random_circuits::Dice dice(2);
    Circuit c = cell_packs::drawn(n, n, dice);
    for (Branch& b : c.branches)
        b.emf = 0.0;
    c.loads.clear();
    auto const one = static_cast<std::size_t>(node(n / 4, n / 5, n)),
               other = static_cast<std::size_t>(node(n / 4 + 2, n / 5 + 3, n));
    auto there = c, back = c;
    there.branches[one].emf = back.branches[other].emf = 1.0;
    CHECK(solve(there, iterated).branch_amps[other] ==
          doctest::Approx(solve(back, iterated).branch_amps[one]).epsilon(1e-9));
}

TEST_CASE("packs of any shape and load agree with the sparse factorization") {
    random_circuits::Dice dice(3);
    for (int i = 0; i < 12; ++i) {
        Circuit c = cell_packs::drawn(1 + dice.below(50), 1 + dice.below(50), dice);
        if (i % 3 == 0) c.loads[0].law = ConstantPower{50.0};
        CAPTURE(i);
        Solution const ours = solve(c, iterated), theirs = solve(c, factored);
        REQUIRE(ours.status == theirs.status);
        if (ours.status != Status::solved) continue;
        CHECK(worst_volts(ours, theirs) < 1e-12);
        CHECK(worst_amps(ours, theirs) < 1e-9);
        CHECK(ours.condition == doctest::Approx(theirs.condition).epsilon(1e-2));
    }
}

TEST_CASE("packs with corroded, broken or altogether different bus-bars agree with the sparse factorization") {
    random_circuits::Dice dice(6);
    for (int kind = 0; kind < 3; ++kind) {
        Circuit c = cell_packs::drawn(30, 40, dice);
        for (Branch& b : c.branches) {
            if (b.emf != 0.0) continue;
            if (kind == 0 && dice.chance(0.02)) b.resistance *= 1000.0;
            if (kind == 1 && dice.chance(0.02)) b.resistance = 1e6;
            if (kind == 2) b.resistance = dice.log_between(1e-6, 1e-2);
        }
        CAPTURE(kind);
        Solution const ours = solve(c, iterated), theirs = solve(c, factored);
        REQUIRE(ours.status == Status::solved);
        CHECK(worst_volts(ours, theirs) < 1e-12);
    }
}

TEST_CASE("the iteration knows no grid: random networks over four decades, solved through many levels") {
    random_circuits::Dice dice(4);
    for (int i = 0; i < 20; ++i) {
        int const nodes = 50 + dice.below(2000);
        std::vector<Line> lines;
        std::vector<double> siemens, amps;
        auto const add = [&](int a, int b) {
            lines.push_back({a, b});
            siemens.push_back(dice.log_between(1e-2, 1e2));
            amps.push_back(dice.between(-1.0, 1.0));
        };
        for (int n = 1; n < nodes; ++n)
            add(n, dice.below(n));
        for (int extra = dice.below(2 * nodes); extra > 0; --extra)
            if (int const a = dice.below(nodes), b = dice.below(nodes); a != b) add(a, b);
        auto const found = PackNetwork(nodes, lines, siemens, {0, nodes / 2}, 4).volts(amps);
        CAPTURE(nodes);
        REQUIRE(found);
        SparseNetwork sparse(nodes, lines, siemens, {0, nodes / 2}), other(2, {{0, 1}}, {1.0}, {0});
        other = std::move(sparse);
        auto const expected = other.volts(amps);
        double largest = 0.0, worst = 0.0;
        for (std::size_t n = 0; n < expected.size(); ++n) {
            largest = std::max(largest, std::abs(expected[n]));
            worst = std::max(worst, std::abs((*found)[n] - expected[n]));
        }
        CHECK(worst < 1e-12 * largest);
    }
}

TEST_CASE("over 18 decades of resistance the iteration agrees with star-mesh elimination to 1e-12") {
    random_circuits::Dice dice(5);
    double worst_of_all = 0.0;
    for (int i = 0; i < 20; ++i) {
        int const nodes = 200;
        std::vector<Line> lines;
        std::vector<double> siemens, amps;
        for (int n = 1; n < nodes; ++n)
            for (int to : {n - 1, dice.below(n)}) {
                lines.push_back({n, to});
                siemens.push_back(dice.log_between(1e-9, 1e9));
                amps.push_back(siemens.back() * dice.between(-1.0, 1.0));
            }
        auto const found = PackNetwork(nodes, lines, siemens, {0}, 4).volts(amps);
        CAPTURE(i);
        REQUIRE(found);
        auto const plan = std::make_shared<EliminationPlan>(plan_elimination(nodes, lines, {0}));
        auto const expected = StarMesh(plan, siemens).volts(amps);
        double worst = 0.0; // of sources of up to 1 V
        for (std::size_t n = 0; n < expected.size(); ++n)
            worst = std::max(worst, std::abs((*found)[n] - expected[n]));
        worst_of_all = std::max(worst_of_all, worst);
    }
    CHECK(worst_of_all < 1e-12); // reached: 5.3e-15
}
