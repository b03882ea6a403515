// Numbers that leave little room: whole banks with resistances over twelve decades, a load within a trillionth of what
// its bank can give, and a hundred thousand cells of which one is bad. Against 113-bit arithmetic and a cosine series.
#include "bankwright/network/build.hpp"
#include "bankwright/solver/solve.hpp"
#include "reference/slow_solver.hpp"
#include "support/cell_packs.hpp"
#include "support/random_bank.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using slow::Quad;

namespace {

// A bank's network with other resistances, and with loads of constant current.
solver::Circuit network_of(std::uint64_t seed, double low_ohms, double high_ohms) {
    auto circuit = build(support::RandomBank(seed, seed % 2 == 1).make()).circuit;
    random_circuits::Dice dice(seed);
    for (auto& branch : circuit.branches)
        branch.resistance = dice.log_between(low_ohms, high_ohms);
    for (auto& load : circuit.loads)
        load.law = solver::ConstantCurrent{dice.between(0.0, 20.0)};
    return circuit;
}

// What the circuit is as seen from a load's terminals with all other loads off: V0 - Z I.
struct Source {
    Quad volts, ohms;
};

Source seen_from(solver::Circuit circuit, std::size_t port) {
    auto const plus = static_cast<std::size_t>(circuit.loads[port].plus);
    auto const minus = static_cast<std::size_t>(circuit.loads[port].minus);
    circuit.loads = {circuit.loads[port]};
    auto const volts = [&](double amperes) {
        circuit.loads[0].law = solver::ConstantCurrent{amperes};
        auto const answer = slow::solve(circuit);
        return answer.group[plus] == answer.group[minus] ? answer.volts[plus] - answer.volts[minus] : Quad(0);
    };
    auto const open = volts(0.0);
    return {open, open - volts(1.0)};
}

} // namespace

TEST_CASE("banks whose resistances lie over twelve decades agree with quadruple precision to 1e-14") {
    double worst_volts = 0.0, worst_amps = 0.0; // relative to the largest of the bank
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        CAPTURE(seed);
        auto const circuit = network_of(seed, 1e-6, 1e6);
        auto const ours = solver::solve(circuit);
        auto const theirs = slow::solve(circuit);
        REQUIRE(ours.status == solver::Status::solved);
        double volts = 1.0, amps = 1e-6, wrong_volts = 0.0, wrong_amps = 0.0;
        for (std::size_t n = 0; n < theirs.volts.size(); ++n) {
            volts = std::max(volts, std::abs(static_cast<double>(theirs.volts[n])));
            wrong_volts = std::max(wrong_volts, std::abs(static_cast<double>(ours.volts[n] - theirs.volts[n])));
        }
        for (auto const& load : circuit.loads)
            amps = std::max(amps, std::get<solver::ConstantCurrent>(load.law).amperes);
        for (std::size_t b = 0; b < theirs.branch_amps.size(); ++b) {
            amps = std::max(amps, std::abs(static_cast<double>(theirs.branch_amps[b])));
            wrong_amps =
                std::max(wrong_amps, std::abs(static_cast<double>(ours.branch_amps[b] - theirs.branch_amps[b])));
        }
        worst_volts = std::max(worst_volts, wrong_volts / volts);
        worst_amps = std::max(worst_amps, wrong_amps / amps);
    }
    MESSAGE("worst volts ", worst_volts, ", amperes ", worst_amps);
    CHECK(worst_volts < 1e-14);
    CHECK(worst_amps < 1e-14);
}

// A constant power P holds V = V0 (1 + sqrt(1 - P / Pmax)) / 2, Pmax = V0^2 / 4 Z. With P within a share d of Pmax its
// voltage answers a rounding error e of P, V0 or Z by e / sqrt(d): that is the condition of the question, not of the
// method, so the bound grows by it.
TEST_CASE("a load within a trillionth of all its bank can give has the voltage that physics says, to its condition") {
    int loads = 0;
    double worst = 0.0; // error times sqrt(d), relative to the open voltage
    for (std::uint64_t seed = 101; loads < 150; ++seed) {
        auto circuit = network_of(seed, 1e-4, 1e1);
        auto const source = seen_from(circuit, 0);
        if (source.volts < 1.0) continue; // not fed
        ++loads;
        auto const volts = static_cast<double>(source.volts);
        auto const most = static_cast<double>(source.volts * source.volts / (4 * source.ohms));
        circuit.loads = {circuit.loads[0]};
        auto const plus = static_cast<std::size_t>(circuit.loads[0].plus);
        auto const minus = static_cast<std::size_t>(circuit.loads[0].minus);
        for (int decade = 1; decade <= 12; ++decade) {
            CAPTURE(seed);
            CAPTURE(decade);
            double const short_of = std::pow(10.0, -decade);
            circuit.loads[0].law = solver::ConstantPower{most * (1.0 - short_of)};
            auto const solved = solver::solve(circuit);
            REQUIRE(solved.status == solver::Status::solved);
            auto const exact = volts * (1.0 + std::sqrt(short_of)) / 2.0;
            auto const wrong = std::abs(solved.volts[plus] - solved.volts[minus] - exact) / volts;
            worst = std::max(worst, wrong * std::sqrt(short_of));
            circuit.loads[0].law = solver::ConstantPower{most * (1.0 + short_of)};
            auto const refused = solver::solve(circuit);
            REQUIRE(refused.status == solver::Status::no_operating_point);
            CHECK(std::abs(refused.reachable_share * (1.0 + short_of) - 1.0) < 1e-13);
        }
    }
    MESSAGE("worst error times sqrt(d) ", worst);
    CHECK(worst < 1e-14);
}

// Cells alike make a pack of the eigenvectors of two paths, cosines (Strang, "The Discrete Cosine Transform", SIAM
// Review 41, 1999, from memory); the bad cell is one current pushed between its ends, of the size that its own law asks
// for.
TEST_CASE("a hundred thousand cells, one of them bad, are what the cosine series says") {
    constexpr int rows = 317, columns = 316; // of nodes and of cells beside each other: 316 x 316 = 99,856 cells
    constexpr long double cell = 1.0L / 0.020L, bar = 1.0L / 50e-6L;
    auto const cosines = [](int count) { // by wave and place, each wave of length 1
        std::vector<std::vector<long double>> waves;
        for (int k = 0; k < count; ++k) {
            auto& wave = waves.emplace_back();
            for (int i = 0; i < count; ++i)
                wave.push_back(std::cos(std::acos(-1.0L) * k * (i + 0.5L) / count) *
                               std::sqrt((k == 0 ? 1.0L : 2.0L) / count));
        }
        return waves;
    };
    auto const along = cosines(rows), across = cosines(columns);
    auto const stiffness = [](int wave, int count) { return 2.0L - 2.0L * std::cos(std::acos(-1.0L) * wave / count); };
    struct Place {
        int row, column;
    };
    Place const low{100, 211}, high{101, 211}; // the bad cell's two ends

    // [V] at a place for one ampere pushed from the bad cell's low end to its high end.
    auto const pushed = [&](Place at) {
        long double sum = 0.0L;
        for (int k = 0; k < rows; ++k) {
            auto const& wave = along[static_cast<std::size_t>(k)];
            auto const here = [&](int row) { return wave[static_cast<std::size_t>(row)]; };
            auto const push = (here(high.row) - here(low.row)) * here(at.row);
            for (int l = 0; l < columns; ++l) {
                if (k == 0 && l == 0) continue;
                auto const& other = across[static_cast<std::size_t>(l)];
                sum += push * other[static_cast<std::size_t>(low.column)] * other[static_cast<std::size_t>(at.column)] /
                       (cell * stiffness(k, rows) + bar * stiffness(l, columns));
            }
        }
        return sum;
    };

    auto pack = cell_packs::alike(rows - 1, columns, 0.0);
    auto const bad = static_cast<std::size_t>(cell_packs::node(low.row, low.column, columns));
    pack.branches[bad].emf = 0.2;
    pack.branches[bad].resistance = 0.5;
    auto const ours = solver::solve(pack);
    REQUIRE(ours.status == solver::Status::solved);

    // Its ends rise by J (pushed(high) - pushed(low)), and J = g' (e' - e) + (g' - g) (their fall).
    long double const lift = pushed(high) - pushed(low), weak = 1.0L / 0.5L;
    long double const push = weak * (0.2L - 3.7L) / (1.0L + (weak - cell) * lift);
    auto const exact = [&](Place at) { return 3.7L * at.row + push * (pushed(at) - pushed({0, 0})); };
    double worst = 0.0;
    std::vector<Place> const places{low,      high,       {100, 210}, {101, 212}, {99, 211},  {102, 211}, {0, 315},
                                    {316, 0}, {316, 315}, {100, 0},   {101, 315}, {158, 158}, {50, 260},  {250, 20}};
    for (auto const at : places)
        worst = std::max(worst, std::abs(static_cast<double>(
                                    ours.volts[static_cast<std::size_t>(cell_packs::node(at.row, at.column, columns))] -
                                    exact(at))));
    MESSAGE("worst error ", worst, " V of ", 3.7 * (rows - 1));
    CHECK(worst < 1e-12 * 3.7 * (rows - 1));
    auto const through = weak * (0.2L - (exact(high) - exact(low)));
    CHECK(std::abs(ours.branch_amps[bad] / static_cast<double>(through) - 1.0) < 1e-10);
    CHECK(ours.branch_amps[bad] < -1.0); // its neighbors drive it backwards
}
