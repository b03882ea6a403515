#include "bankwright/solver/solve.hpp"
#include "reference/slow_solver.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

struct Worst {
    double volts = 0.0; // of any node, relative to the largest voltage or source of its circuit
    double amps = 0.0;  // of any branch, relative to the largest current of its circuit, loads included
};

void compare(Circuit const& circuit, SolveOptions const& options, Worst& worst) {
    Solution const ours = solve(circuit, options);
    REQUIRE(ours.status == Status::solved);
    slow::Answer const theirs = slow::solve(circuit);
    // Floors: where nothing flows we say 0 and the dense matrix leaves noise.
    double volts = 1e-6, amps = 1e-6, wrong_volts = 0.0, wrong_amps = 0.0;
    for (auto const& b : circuit.branches)
        volts = std::max(volts, std::abs(b.emf));
    for (double a : ours.load_amps)
        amps = std::max(amps, std::abs(a));
    for (std::size_t n = 0; n < theirs.volts.size(); ++n) {
        volts = std::max(volts, std::abs(static_cast<double>(theirs.volts[n])));
        wrong_volts = std::max(wrong_volts, std::abs(static_cast<double>(ours.volts[n] - theirs.volts[n])));
    }
    for (std::size_t b = 0; b < theirs.branch_amps.size(); ++b) {
        amps = std::max(amps, std::abs(static_cast<double>(theirs.branch_amps[b])));
        wrong_amps = std::max(wrong_amps, std::abs(static_cast<double>(ours.branch_amps[b] - theirs.branch_amps[b])));
    }
    worst.volts = std::max(worst.volts, wrong_volts / volts);
    worst.amps = std::max(worst.amps, wrong_amps / amps);
}

Worst compare_many(int count, random_circuits::Recipe const& recipe, SolveOptions const& options, std::uint64_t seed) {
    random_circuits::Dice dice(seed);
    Worst worst;
    for (int i = 0; i < count; ++i)
        compare(random_circuits::circuit(dice, recipe), options, worst);
    return worst;
}

constexpr SolveOptions star_mesh{}, sparse{.star_mesh_limit = 0};

} // namespace

// The limits are the next decade above what was reached: 1.2e-15, 5e-16, 2.5e-15, 1e-15 for volts.
TEST_CASE("ordinary random circuits agree with nodal analysis in quadruple precision to 1e-14") {
    Worst const worst = compare_many(3000, {}, star_mesh, 1);
    CHECK(worst.volts < 1e-14);
    CHECK(worst.amps < 1e-14);
}

TEST_CASE("over six decades of resistance the error stays below 1e-14") {
    Worst const worst = compare_many(2000, {.low_ohms = 1e-6, .high_ohms = 1.0}, star_mesh, 2);
    CHECK(worst.volts < 1e-14);
    CHECK(worst.amps < 1e-14);
}

TEST_CASE("over 18 decades of resistance the error stays below 1e-14") {
    Worst const worst = compare_many(2000, {.low_ohms = 1e-9, .high_ohms = 1e9}, star_mesh, 3);
    CHECK(worst.volts < 1e-14);
    CHECK(worst.amps < 1e-14);
}

TEST_CASE("the sparse method agrees to 1e-14 over six decades, where large packs lie") {
    Worst const worst = compare_many(2000, {.low_ohms = 1e-6, .high_ohms = 1.0}, sparse, 4);
    CHECK(worst.volts < 1e-14);
    CHECK(worst.amps < 1e-14);
}
