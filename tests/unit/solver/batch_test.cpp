#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/solve.hpp"
#include "support/random_circuits.hpp"

#include <cmath>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

// Sources are summed at nodes: two decades of resistance between them cost one of the digits (tests/reference).
constexpr random_circuits::Recipe ordinary{.low_ohms = 1e-3, .high_ohms = 1e-1};
constexpr random_circuits::Recipe wide{.max_nodes = 20, .low_ohms = 1e-3, .high_ohms = 1e-1, .connected = true};

// The same wiring with other numbers.
Circuit redrawn(Circuit c, random_circuits::Dice& dice) {
    for (Branch& b : c.branches) {
        b.resistance *= dice.between(0.5, 2.0);
        b.emf *= dice.between(0.8, 1.2);
    }
    for (Load& l : c.loads)
        if (auto* current = std::get_if<ConstantCurrent>(&l.law)) current->amperes *= dice.between(-1.0, 2.0);
    return c;
}

// Solves `count` redrawn banks as rows and returns the largest difference from solve(), relative to the largest
// voltage.
double worst_difference(Circuit const& pattern, std::size_t count, random_circuits::Dice& dice,
                        BatchOptions const& options = {}) {
    BatchPlan const plan = compile(pattern);
    std::vector<Circuit> banks;
    std::vector<double> rows;
    for (std::size_t i = 0; i < count; ++i) {
        banks.push_back(redrawn(pattern, dice));
        std::vector<double> const row = parameters_of(plan, banks.back());
        rows.insert(rows.end(), row.begin(), row.end());
    }
    auto const nodes = static_cast<std::size_t>(pattern.nodes);
    std::vector<double> volts(count * nodes);
    solve_rows(plan, rows.data(), count, volts.data(), options);
    double worst = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        Solution const solution = solve(banks[i]);
        REQUIRE(solution.status == Status::solved);
        double largest = 1e-6;
        for (Branch const& b : banks[i].branches)
            largest = std::max(largest, std::abs(b.emf));
        for (double v : solution.volts)
            largest = std::max(largest, std::abs(v));
        for (std::size_t n = 0; n < nodes; ++n)
            worst = std::max(worst, std::abs(volts[i * nodes + n] - solution.volts[n]) / largest);
    }
    return worst;
}

std::vector<InstructionSet> sets_here() {
    std::vector<InstructionSet> sets;
    for (InstructionSet set : {InstructionSet::portable, InstructionSet::avx2, InstructionSet::avx512})
        if (runs_here(set)) sets.push_back(set);
    return sets;
}

} // namespace

TEST_CASE("a batch answers as solve() does, bank by bank, on each instruction set of this machine") {
    for (InstructionSet set : sets_here()) {
        CAPTURE(name(set));
        random_circuits::Dice dice(11);
        double worst = 0.0;
        for (int i = 0; i < 200; ++i)
            worst = std::max(worst, worst_difference(random_circuits::circuit(dice, ordinary), 5, dice, {.set = set}));
        CHECK(worst < 1e-13);
    }
}

TEST_CASE("counts that do not fill the last block, and a single bank, are answered whole") {
    random_circuits::Dice dice(12);
    Circuit const pattern = random_circuits::circuit(dice, wide);
    for (std::size_t count : {1u, 15u, 16u, 17u, 50u})
        CHECK(worst_difference(pattern, count, dice) < 1e-13);
}

TEST_CASE("a star of twelve arms, a ring and a full mesh of nine go through every degree of pivot") {
    random_circuits::Dice dice(13);
    Circuit star, mesh;
    star.nodes = 14;
    for (int n = 1; n < 13; ++n) {
        star.branches.push_back({n, 0, 1e-3, n % 2 ? 12.0 : 0.0});
        star.branches.push_back({n, n == 12 ? 1 : n + 1, 2e-3, 0.0});
        star.branches.push_back({13, n, 5e-3, n % 3 ? 0.0 : 6.0});
    }
    mesh.nodes = 10;
    for (int a = 0; a < 10; ++a)
        for (int b = 0; b < a; ++b)
            mesh.branches.push_back({a, b, 1e-3 * (1 + a + b), (a * b) % 4 == 1 ? 12.0 : 0.0});
    mesh.loads.push_back({3, 7, ConstantCurrent{50.0}});
    for (InstructionSet set : sets_here()) {
        CHECK(worst_difference(star, 20, dice, {.set = set}) < 1e-14);
        CHECK(worst_difference(mesh, 20, dice, {.set = set}) < 1e-14);
    }
}

TEST_CASE("the answers do not depend on the number of threads, to the last bit") {
    random_circuits::Dice dice(14);
    Circuit const pattern = random_circuits::circuit(dice, wide);
    BatchPlan const plan = compile(pattern);
    std::size_t const count = 1000, nodes = static_cast<std::size_t>(pattern.nodes);
    std::vector<double> rows, one(count * nodes), three(count * nodes);
    for (std::size_t i = 0; i < count; ++i) {
        std::vector<double> const row = parameters_of(plan, redrawn(pattern, dice));
        rows.insert(rows.end(), row.begin(), row.end());
    }
    solve_rows(plan, rows.data(), count, one.data(), {.threads = 1});
    solve_rows(plan, rows.data(), count, three.data(), {.threads = 3});
    CHECK(one == three);
}

TEST_CASE("asked for some nodes only, a batch gives the same volts there") {
    random_circuits::Dice dice(15);
    for (int i = 0; i < 50; ++i) {
        Circuit const pattern = random_circuits::circuit(dice);
        int const node = dice.below(pattern.nodes);
        BatchPlan const all = compile(pattern), few = compile(pattern, {node});
        std::vector<double> const row = parameters_of(all, pattern);
        std::vector<double> volts(static_cast<std::size_t>(pattern.nodes));
        double here = 0.0;
        solve_rows(all, row.data(), 1, volts.data());
        solve_rows(few, row.data(), 1, &here);
        double const there = volts[static_cast<std::size_t>(node)]; // found in another order
        CHECK(here == doctest::Approx(there).epsilon(1e-12).scale(1.0));
        CHECK(few.program.backward.size() <= all.program.backward.size());
    }
}

TEST_CASE("branch currents of a block are those of solve()") {
    random_circuits::Dice dice(16);
    Circuit const pattern = random_circuits::circuit(dice, {.max_nodes = 10, .join_share = 0.0, .connected = true});
    BatchPlan const plan = compile(pattern);
    Block block(plan);
    std::vector<double> const row = parameters_of(plan, pattern);
    for (int p = 0; p < plan.parameters(); ++p)
        std::fill_n(block.parameter(p), lanes, row[static_cast<std::size_t>(p)]);
    block.solve();
    Solution const solution = solve(pattern);
    double largest = 1e-6;
    for (double a : solution.branch_amps)
        largest = std::max(largest, std::abs(a));
    for (std::size_t b = 0; b < pattern.branches.size(); ++b) {
        double amps[lanes];
        block.branch_amps(static_cast<int>(b), amps);
        CHECK(std::abs(amps[lanes - 1] - solution.branch_amps[b]) < 1e-10 * largest); // a difference of near voltages
    }
}

// Six resistances and three emfs: tiles of both kinds, one across the border, and what is left over.
TEST_CASE("a wrong number is found wherever it stands, and what is merely far out is none") {
    Circuit circuit{.nodes = 4, .branches = {}, .joins = {}, .loads = {}, .reference = 0};
    for (int node = 1; node < 4; ++node) {
        circuit.branches.push_back({0, node, 1.0, 12.0});
        circuit.branches.push_back({node - 1, node, 1.0, 0.0});
    }
    BatchPlan const plan = compile(circuit);
    auto const width = static_cast<std::size_t>(plan.parameters());
    REQUIRE(width == 9);
    std::vector<double> const row = parameters_of(plan, circuit);
    std::vector<double> volts(4 * lanes);
    for (InstructionSet set : sets_here())
        for (std::size_t at = 0; at < width; ++at)
            for (std::size_t lane = 0; lane < lanes; ++lane) {
                std::vector<double> rows;
                for (std::size_t i = 0; i < lanes; ++i)
                    rows.insert(rows.end(), row.begin(), row.end());
                auto const refused = [&](double number) {
                    rows[lane * width + at] = number;
                    try {
                        solve_rows(plan, rows.data(), lanes, volts.data(), {.set = set});
                    } catch (std::invalid_argument const&) {
                        return true;
                    }
                    return false;
                };
                bool const resistance = at < 6;
                CHECK(refused(std::nan("")));
                CHECK(refused(HUGE_VAL));
                CHECK(refused(-HUGE_VAL));
                CHECK(refused(-12.0) == resistance);
                CHECK(refused(0.0) == resistance);
                CHECK(refused(0.99e-75) == resistance);
                CHECK(refused(1.01e75) == resistance);
                CHECK_FALSE(refused(1.01e-75));
                CHECK_FALSE(refused(0.99e75));
            }
}

TEST_CASE("what a caller gets wrong is refused with its reason") {
    Circuit circuit{.nodes = 2, .branches = {{0, 1, 1.0, 12.0}}, .joins = {}, .loads = {}, .reference = 0};
    CHECK_THROWS_AS(compile(circuit, {2}), std::invalid_argument);
    BatchPlan const plan = compile(circuit);
    double volts[2];
    for (double bad : {0.0, -1.0, std::nan(""), HUGE_VAL, 1e-80, 1e80}) {
        double const row[2] = {bad, 12.0};
        CHECK_THROWS_AS(solve_rows(plan, row, 1, volts), std::invalid_argument);
    }
    double const row[2] = {1.0, std::nan("")};
    CHECK_THROWS_AS(solve_rows(plan, row, 1, volts), std::invalid_argument);
    Circuit more = circuit;
    more.branches.push_back({0, 1, 1.0, 12.0});
    CHECK_THROWS_AS(parameters_of(plan, more), std::invalid_argument);
    circuit.loads.push_back({1, 0, ConstantPower{5.0}});
    CHECK_THROWS_AS(parameters_of(plan, circuit), std::invalid_argument);
    circuit.branches.push_back({0, 1, 1.0, 0.0});
    BatchPlan const idle = compile(circuit); // whose second branch has no emf
    Circuit other = circuit;
    other.branches[1].emf = 12.0;
    CHECK_THROWS_AS(parameters_of(idle, other), std::invalid_argument);
    other = circuit;
    other.loads[0].law = ConstantCurrent{5.0};
    CHECK_THROWS_AS(parameters_of(idle, other), std::invalid_argument);
    CHECK_NOTHROW(parameters_of(idle, circuit));
    circuit.branches.back().resistance = 0.0;
    CHECK_THROWS_AS(compile(circuit), std::invalid_argument);
}

TEST_CASE("the parameters of a circuit and the circuit of its parameters are the same thing") {
    Circuit circuit{.nodes = 3,
                    .branches = {{0, 1, 1.0, 12.0}, {1, 2, 2.0, 0.0}},
                    .joins = {},
                    .loads = {{2, 0, ConstantPower{5.0}},
                              {1, 0, SquareLaw{1.0, 2.0, 0.5}},
                              {2, 0, LimitedSource{14.0, 3.0}},
                              {2, 1, ConstantCurrent{4.0}}},
                    .reference = 0};
    BatchPlan const plan = compile(circuit);
    std::vector<double> const row = parameters_of(plan, circuit);
    CHECK(row == std::vector<double>{1.0, 2.0, 12.0, 5.0, 1.0, 2.0, 0.5, 14.0, 3.0, 4.0});
    std::vector<double> other(row);
    for (double& value : other)
        value *= 0.5;
    CHECK(parameters_of(plan, circuit_of(plan, other.data())) == other);
}
