#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/solve.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

// 12 V behind 10 mohm and a lead of 2 mohm to and 3 mohm fro; the reference is at the battery's minus post.
Circuit one_battery(Law law, int reference = 0) {
    return {.nodes = 4,
            .branches = {{0, 1, 0.010, 12.0}, {1, 2, 0.002, 0.0}, {3, 0, 0.003, 0.0}},
            .joins = {},
            .loads = {{2, 3, law}},
            .reference = reference};
}

std::vector<double> volts_of(Circuit const& circuit) {
    BatchPlan const plan = compile(circuit);
    std::vector<double> const row = parameters_of(plan, circuit);
    std::vector<double> volts(static_cast<std::size_t>(circuit.nodes));
    solve_rows(plan, row.data(), 1, volts.data());
    return volts;
}

// What is left of Ohm's and Kirchhoff's laws if `amps` flow through the one loop.
void check_loop(std::vector<double> const& volts, double amps) {
    CHECK(volts[0] == 0.0);
    CHECK(volts[1] == doctest::Approx(12.0 - 0.010 * amps).epsilon(1e-13));
    CHECK(volts[2] == doctest::Approx(12.0 - 0.012 * amps).epsilon(1e-13));
    CHECK(volts[3] == doctest::Approx(0.003 * amps).epsilon(1e-13).scale(1.0));
}

} // namespace

TEST_CASE("constant power takes the answer of the higher voltage") {
    // V^2 - 12 V + 0.015 x 1000 = 0
    double const across = 0.5 * (12.0 + std::sqrt(144.0 - 4.0 * 0.015 * 1000.0));
    check_loop(volts_of(one_battery(ConstantPower{1000.0})), 1000.0 / across);
    check_loop(volts_of(one_battery(ConstantPower{0.0})), 0.0);
}

TEST_CASE("more power than the source has is no number, and its neighbors in the block are untouched") {
    Circuit const circuit = one_battery(ConstantPower{1000.0});
    BatchPlan const plan = compile(circuit);
    Block block(plan);
    std::vector<double> const row = parameters_of(plan, circuit);
    for (int p = 0; p < plan.parameters(); ++p)
        std::fill_n(block.parameter(p), lanes, row[static_cast<std::size_t>(p)]);
    block.parameter(plan.layout.load[0])[3] = 144.0 / 4.0 / 0.015 * 1.001; // just over V0^2 / 4 R
    block.solve();
    double const expected = volts_of(circuit)[2];
    for (int lane = 0; lane < lanes; ++lane) {
        if (lane == 3)
            CHECK(std::isnan(block.volts(2)[lane]));
        else
            CHECK(block.volts(2)[lane] == expected);
    }
}

TEST_CASE("a machine on a square-law torque meets its own two equations") {
    for (double duty : {1.0, 0.6, 0.0}) {
        SquareLaw const machine{.coefficient = 0.5, .resistance = 0.05, .duty = duty};
        std::vector<double> const volts = volts_of(one_battery(machine));
        double const amps = volts[3] / 0.003, across = volts[2] - volts[3];
        check_loop(volts, amps);
        // amps = d c E^2, E + c E^2 R = d V
        double const back = duty > 0.0 ? std::sqrt(amps / (duty * 0.5)) : 0.0;
        CHECK(back + 0.5 * back * back * 0.05 == doctest::Approx(duty * across).epsilon(1e-12));
    }
}

TEST_CASE("a limited source holds its voltage, gives its limit, or stays out") {
    check_loop(volts_of(one_battery(LimitedSource{12.3, 100.0})), -0.3 / 0.015);
    check_loop(volts_of(one_battery(LimitedSource{14.4, 50.0})), -50.0);
    check_loop(volts_of(one_battery(LimitedSource{11.0, 50.0})), 0.0);
}

TEST_CASE("a load fed backwards draws nothing") {
    Circuit circuit = one_battery(ConstantPower{500.0});
    circuit.branches[0].emf = -12.0;
    std::vector<double> const volts = volts_of(circuit);
    CHECK(volts[2] == doctest::Approx(-12.0));
    CHECK(volts[3] == doctest::Approx(0.0).scale(1.0));
    circuit.loads[0].law = SquareLaw{0.5, 0.05, 1.0};
    CHECK(volts_of(circuit)[2] == doctest::Approx(-12.0));
}

TEST_CASE("any node may be the reference: the differences stay what they are") {
    std::vector<double> const home = volts_of(one_battery(ConstantPower{1000.0}));
    for (int reference = 1; reference < 4; ++reference) {
        std::vector<double> const volts = volts_of(one_battery(ConstantPower{1000.0}, reference));
        CHECK(volts[static_cast<std::size_t>(reference)] == 0.0);
        for (std::size_t n = 0; n < 4; ++n)
            CHECK(volts[n] == doctest::Approx(home[n] - home[static_cast<std::size_t>(reference)]).scale(1.0));
    }
}

TEST_CASE("a block solved twice gives the same answer twice") {
    Circuit const circuit = one_battery(SquareLaw{0.5, 0.05, 1.0}, 1);
    BatchPlan const plan = compile(circuit);
    Block block(plan);
    std::vector<double> const row = parameters_of(plan, circuit);
    for (int p = 0; p < plan.parameters(); ++p)
        std::fill_n(block.parameter(p), lanes, row[static_cast<std::size_t>(p)]);
    block.solve();
    std::vector<double> first;
    for (int n = 0; n < 4; ++n)
        first.push_back(block.volts(n)[0]);
    block.solve();
    for (int n = 0; n < 4; ++n)
        CHECK(block.volts(n)[0] == first[static_cast<std::size_t>(n)]);
}

TEST_CASE("one load of any law among constant currents: power and Kirchhoff's sums hold in random circuits") {
    random_circuits::Dice dice(21);
    for (int i = 0; i < 300; ++i) {
        Circuit circuit = random_circuits::circuit(dice, {.low_ohms = 1e-3, .high_ohms = 1e-1, .amperes = 20.0});
        int const plus = dice.below(circuit.nodes), minus = dice.below(circuit.nodes);
        circuit.loads.push_back({plus, minus, SquareLaw{dice.between(0.0, 2.0), dice.between(0.0, 0.1), 0.8}});
        std::vector<double> const volts = volts_of(circuit);
        // The same circuit with the current that this voltage asks for must have this voltage.
        BatchPlan const plan = compile(circuit);
        if (plan.loads != LoadMethod::formula) continue; // not fed
        double const across = volts[static_cast<std::size_t>(plus)] - volts[static_cast<std::size_t>(minus)];
        auto const& law = std::get<SquareLaw>(circuit.loads.back().law);
        double const driven = law.duty * std::max(across, 0.0);
        double const back = 2.0 * driven / (1.0 + std::sqrt(1.0 + 4.0 * law.coefficient * law.resistance * driven));
        circuit.loads.back().law = ConstantCurrent{law.duty * law.coefficient * back * back};
        Solution const fixed = solve(circuit);
        REQUIRE(fixed.status == Status::solved);
        double largest = 1.0;
        for (double v : fixed.volts)
            largest = std::max(largest, std::abs(v));
        for (std::size_t n = 0; n < volts.size(); ++n)
            CHECK(std::abs(volts[n] - fixed.volts[n]) < 1e-11 * largest);
    }
}

TEST_CASE("several loads in one batch settle where each bank alone does") {
    // A 24 V bank of two strings that feeds machines, powers and a charger at different places along its leads.
    std::vector<std::vector<Law>> const mixtures{
        {ConstantPower{300.0}, ConstantPower{500.0}},
        {ConstantPower{300.0}, ConstantPower{0.0}, ConstantPower{200.0}},
        {SquareLaw{0.5, 0.05, 0.9}, SquareLaw{0.3, 0.04, 0.6}},
        {SquareLaw{0.5, 0.05, 0.9}, ConstantPower{400.0}},
        {ConstantPower{250.0}, LimitedSource{28.8, 30.0}, ConstantCurrent{5.0}},
    };
    for (auto const& laws : mixtures) {
        Circuit circuit{.nodes = 6,
                        .branches = {{0, 1, 0.006, 25.4},
                                     {0, 1, 0.007, 25.2},
                                     {1, 2, 0.004, 0.0},
                                     {2, 3, 0.006, 0.0},
                                     {3, 4, 0.010, 0.0},
                                     {5, 0, 0.005, 0.0}},
                        .joins = {},
                        .loads = {},
                        .reference = 0};
        for (std::size_t l = 0; l < laws.size(); ++l)
            circuit.loads.push_back({static_cast<int>(2 + l), 5, laws[l]});
        BatchPlan const plan = compile(circuit);
        CHECK(plan.loads == LoadMethod::ports);
        std::size_t const banks = 3 * lanes + 5;
        auto const width = static_cast<std::size_t>(plan.parameters());
        std::vector<double> rows, volts(banks * static_cast<std::size_t>(circuit.nodes));
        for (std::size_t b = 0; b < banks; ++b) {
            auto row = parameters_of(plan, circuit);
            for (std::size_t p = 0; p < width; ++p) // every bank a little different, none the same
                row[p] *= 1.0 + 0.002 * std::sin(static_cast<double>(1 + b * width + p));
            rows.insert(rows.end(), row.begin(), row.end());
        }
        solve_rows(plan, rows.data(), banks, volts.data());
        for (std::size_t b = 0; b < banks; ++b) {
            Solution const alone = solve(circuit_of(plan, rows.data() + b * width));
            REQUIRE(alone.status == Status::solved);
            for (std::size_t n = 0; n < alone.volts.size(); ++n)
                CHECK(volts[b * alone.volts.size() + n] == doctest::Approx(alone.volts[n]).epsilon(1e-13));
        }
    }
}

TEST_CASE("of several powers more than there is gives no number in its own lane alone") {
    Circuit const circuit{.nodes = 3,
                          .branches = {{0, 1, 0.010, 12.0}, {1, 2, 0.005, 0.0}},
                          .joins = {},
                          .loads = {{1, 0, ConstantPower{500.0}}, {2, 0, ConstantPower{700.0}}},
                          .reference = 0};
    BatchPlan const plan = compile(circuit);
    Block block(plan);
    std::vector<double> const row = parameters_of(plan, circuit);
    for (int p = 0; p < plan.parameters(); ++p)
        std::fill_n(block.parameter(p), lanes, row[static_cast<std::size_t>(p)]);
    block.parameter(plan.layout.load[1])[7] = 12.0 * 12.0 / 4.0 / 0.015 * 1.001; // more than the source can ever give
    block.solve();
    double const expected = solve(circuit).volts[2];
    // By the laws of Ohm and Kirchhoff alone: what the voltages make flow is what the two powers ask for. (To 1e-11:
    // the currents are differences of nearly equal voltages.)
    double const near = block.volts(1)[0], far = block.volts(2)[0];
    double const to_far = (near - far) / 0.005, from_source = (12.0 - near) / 0.010;
    CHECK(far * to_far == doctest::Approx(700.0).epsilon(1e-11));
    CHECK(near * (from_source - to_far) == doctest::Approx(500.0).epsilon(1e-11));
    for (int lane = 0; lane < lanes; ++lane) {
        if (lane == 7)
            CHECK(std::isnan(block.volts(2)[lane]));
        else
            CHECK(block.volts(2)[lane] == doctest::Approx(expected).epsilon(1e-14));
    }
}

TEST_CASE("one node asked for alone is the same node, whichever of the loads is the one that follows its voltage") {
    Circuit circuit = one_battery(ConstantCurrent{7.0}, 3);
    circuit.loads.push_back({2, 0, ConstantPower{500.0}}); // past the lead back
    auto const all = volts_of(circuit);
    for (int node = 0; node < circuit.nodes; ++node) {
        BatchPlan const plan = compile(circuit, {node});
        std::vector<double> const row = parameters_of(plan, circuit);
        double volts = -1.0;
        solve_rows(plan, row.data(), 1, &volts);
        CHECK(volts == doctest::Approx(all[static_cast<std::size_t>(node)]).epsilon(1e-13).scale(1e-12));
    }
    double const drawn = 7.0 + 500.0 / (all[2] - all[0]); // Kirchhoff at the battery's plus post
    CHECK(all[1] - all[2] == doctest::Approx(0.002 * drawn).epsilon(1e-12));
    CHECK(all[1] - all[0] == doctest::Approx(12.0 - 0.010 * drawn).epsilon(1e-13));
}

TEST_CASE("a load's number outside its law is refused in a batch as it is by solve()") {
    std::vector<std::pair<Law, Law>> const right_and_wrong{{ConstantPower{100.0}, ConstantPower{-100.0}},
                                                           {SquareLaw{0.1, 0.0, 1.0}, SquareLaw{0.1, 0.0, 1.5}},
                                                           {SquareLaw{0.1, 0.0, 1.0}, SquareLaw{0.1, -1.0, 1.0}},
                                                           {LimitedSource{14.0, 20.0}, LimitedSource{14.0, -20.0}}};
    for (auto const& [right, wrong] : right_and_wrong) {
        BatchPlan const plan = compile(one_battery(right));
        std::vector<double> rows;
        for (int bank = 0; bank < 21; ++bank) { // the last of them, past a whole block
            std::vector<double> const row = parameters_of(plan, one_battery(bank == 20 ? wrong : right));
            rows.insert(rows.end(), row.begin(), row.end());
        }
        std::vector<double> volts(21 * 4);
        CHECK(solve(one_battery(wrong)).status == Status::bad_circuit);
        CHECK_NOTHROW(solve_rows(plan, rows.data(), 20, volts.data()));
        CHECK_THROWS_AS(solve_rows(plan, rows.data(), 21, volts.data()), std::invalid_argument);
    }
    BatchPlan const given = compile(one_battery(ConstantCurrent{5.0}));
    std::vector<double> const row =
        parameters_of(given, one_battery(ConstantCurrent{-5.0})); // current the other way is one
    std::vector<double> volts(4);
    CHECK_NOTHROW(solve_rows(given, row.data(), 1, volts.data()));
}
