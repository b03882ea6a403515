#include "bankwright/solver/lanes/lane_random.hpp"
#include "bankwright/solver/monte_carlo.hpp"
#include "bankwright/solver/solve.hpp"
#include "support/bank_networks.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

// Two resistances across 10 V: the middle stands at 10 b / (a + b).
Circuit divider() {
    return {.nodes = 3,
            .branches = {{0, 2, 1e-3, 10.0}, {2, 1, 1000.0, 0.0}, {1, 0, 1000.0, 0.0}},
            .joins = {},
            .loads = {},
            .reference = 0};
}

Spread spread_of(BatchPlan const& plan, double relative) {
    std::vector<double> center = parameters_of(plan, plan.pattern);
    std::vector<double> each(center.size(), relative);
    return {std::move(center), std::move(each)};
}

} // namespace

TEST_CASE("the statistics are those of the sampled banks, solved one by one") {
    BatchPlan const plan = compile(bank_networks::bank(3, 2));
    Spread const spread = spread_of(plan, 0.1);
    std::size_t const samples = 5 * lanes + 3;
    int const node = plan.pattern.loads[0].plus;
    auto const statistics =
        monte_carlo(plan, spread, {{Gauge::node_volts, node}, {Gauge::branch_amps, 0}}, samples, {.seed = 42});
    std::vector<double> volts, amps;
    for (std::size_t b = 0; volts.size() < samples; ++b) {
        std::vector<double> const banks = sampled_banks(plan, spread, 42, b);
        for (std::size_t lane = 0; lane < lanes && volts.size() < samples; ++lane) {
            Solution const s =
                solve(circuit_of(plan, banks.data() + lane * static_cast<std::size_t>(plan.parameters())));
            volts.push_back(s.volts[static_cast<std::size_t>(node)]);
            amps.push_back(s.branch_amps[0]);
        }
    }
    for (int which = 0; which < 2; ++which) {
        auto const& values = which == 0 ? volts : amps;
        Statistics const& found = statistics[static_cast<std::size_t>(which)];
        double mean = 0.0, squares = 0.0;
        for (double v : values)
            mean += v / static_cast<double>(samples);
        for (double v : values)
            squares += (v - mean) * (v - mean);
        CHECK(found.count == samples);
        CHECK(found.mean == doctest::Approx(mean).epsilon(1e-10));
        CHECK(found.deviation == doctest::Approx(std::sqrt(squares / static_cast<double>(samples - 1))).epsilon(1e-9));
        CHECK(found.least == doctest::Approx(*std::min_element(values.begin(), values.end())).epsilon(1e-10));
        CHECK(found.most == doctest::Approx(*std::max_element(values.begin(), values.end())).epsilon(1e-10));
    }
}

TEST_CASE("a divider of two equal parts spreads as an even distribution says, to first order") {
    BatchPlan const plan = compile(divider());
    Spread spread = spread_of(plan, 0.0);
    spread.relative[1] = spread.relative[2] = 0.01;
    // V = 10 b / (a + b): dV = 2.5 V x relative difference. An even spread of +-1 % deviates by 1 % / sqrt 3.
    double const expected = 2.5 * std::sqrt(2.0) * 0.01 / std::sqrt(3.0);
    Statistics const m = monte_carlo(plan, spread, {{Gauge::node_volts, 1}}, 200000)[0];
    CHECK(m.mean == doctest::Approx(5.0).epsilon(1e-4));
    CHECK(m.deviation == doctest::Approx(expected).epsilon(0.01));
    CHECK(m.least >= 5.0 - 2.5 * 0.02001);
    CHECK(m.most <= 5.0 + 2.5 * 0.02001);
}

TEST_CASE("seed and count alone make the result: not the number of threads, to the last bit") {
    BatchPlan const plan = compile(bank_networks::bank(2, 2));
    Spread const spread = spread_of(plan, 0.05);
    std::vector<Gauge> const gauge{{Gauge::node_volts, plan.pattern.loads[0].plus}};
    Statistics const one = monte_carlo(plan, spread, gauge, 10001, {.seed = 7, .threads = 1})[0];
    for (int threads : {2, 3, 8}) {
        Statistics const many = monte_carlo(plan, spread, gauge, 10001, {.seed = 7, .threads = threads})[0];
        CHECK(many.mean == one.mean);
        CHECK(many.deviation == one.deviation);
        CHECK(many.least == one.least);
        CHECK(many.most == one.most);
    }
    CHECK(monte_carlo(plan, spread, gauge, 10001, {.seed = 8})[0].mean != one.mean);
}

TEST_CASE("samples that ask for more power than there is are counted out, not averaged in") {
    Circuit circuit = divider();
    circuit.loads.push_back({1, 0, ConstantPower{0.01}}); // 5 V behind 500 ohm give 12.5 mW at most
    BatchPlan const plan = compile(circuit);
    Spread spread = spread_of(plan, 0.0);
    spread.relative[3 + 1] = 0.5; // 5 to 15 mW
    Statistics const m = monte_carlo(plan, spread, {{Gauge::node_volts, 1}}, 20000)[0];
    CHECK(static_cast<double>(m.count) == doctest::Approx(0.75 * 20000).epsilon(0.03));
    CHECK(m.least >= 2.5);
    CHECK(std::isfinite(m.deviation));
}

TEST_CASE("the generator is even, and no lane or block repeats another") {
    std::set<double> seen;
    double sum = 0.0, squares = 0.0;
    int bins[10] = {};
    LaneRows rows(64);
    std::vector<SampledRow> sampled;
    for (int i = 0; i < 64; ++i)
        sampled.push_back({i * lanes, 0.0, 1.0});
    int const blocks = 100, count = blocks * 64 * lanes;
    for (int b = 0; b < blocks; ++b) {
        LaneGenerator generator = seeded(1, static_cast<std::uint64_t>(b));
        sample(generator, sampled.data(), 64, rows.data(), widest_here());
        for (std::size_t i = 0; i < rows.size(); ++i) {
            double const u = rows.data()[i];
            REQUIRE((u >= 0.0 && u < 1.0));
            seen.insert(u);
            sum += u;
            squares += (u - 0.5) * (u - 0.5);
            ++bins[static_cast<int>(u * 10.0)];
        }
    }
    CHECK(seen.size() == static_cast<std::size_t>(count));
    // Five standard errors of the mean, the variance and a bin's share.
    CHECK(std::abs(sum / count - 0.5) < 5.0 / std::sqrt(12.0 * count));
    CHECK(std::abs(squares / count - 1.0 / 12.0) < 5.0 * std::sqrt(1.0 / 180.0 / count));
    for (int n : bins)
        CHECK(std::abs(n - count / 10) < 5.0 * std::sqrt(0.09 * count));
}

TEST_CASE("every instruction set draws the same samples, to rounding") {
    BatchPlan const plan = compile(bank_networks::bank(1, 2));
    Spread const spread = spread_of(plan, 0.2);
    std::vector<double> const expected = sampled_banks(plan, spread, 3, 5, InstructionSet::portable);
    for (InstructionSet set : {InstructionSet::avx2, InstructionSet::avx512}) {
        if (!runs_here(set)) continue;
        std::vector<double> const found = sampled_banks(plan, spread, 3, 5, set);
        for (std::size_t i = 0; i < found.size(); ++i)
            CHECK(found[i] == doctest::Approx(expected[i]).epsilon(1e-15));
    }
}

TEST_CASE("a spread that does not fit, and a gauge on a node nobody asked for, are refused") {
    BatchPlan const plan = compile(divider(), {1});
    Spread spread = spread_of(plan, 0.1);
    CHECK_THROWS_AS(monte_carlo(plan, spread, {{Gauge::node_volts, 2}}, 10), std::invalid_argument);
    CHECK_THROWS_AS(monte_carlo(plan, spread, {{Gauge::branch_amps, 1}}, 10), std::invalid_argument);
    CHECK_THROWS_AS(monte_carlo(plan, spread, {{Gauge::node_volts, 3}}, 10), std::invalid_argument);
    CHECK_THROWS_AS(monte_carlo(plan, spread, {{Gauge::span_volts, 1, 2}}, 10), std::invalid_argument);
    spread.relative[0] = 1.0;
    CHECK_THROWS_AS(monte_carlo(plan, spread, {}, 10), std::invalid_argument);
    spread.relative[0] = 0.0;
    spread.center[0] = 0.0;
    CHECK_THROWS_AS(monte_carlo(plan, spread, {}, 10), std::invalid_argument);
    Circuit driven = divider();
    driven.loads.push_back({1, 0, SquareLaw{0.1, 0.0, 1.0}});
    BatchPlan const with_motor = compile(driven);
    Spread of_motor = spread_of(with_motor, 0.0);
    CHECK_NOTHROW(monte_carlo(with_motor, of_motor, {}, 10));
    of_motor.relative.back() = 0.05; // a duty above 1
    CHECK_THROWS_AS(monte_carlo(with_motor, of_motor, {}, 10), std::invalid_argument);
    spread.center.pop_back();
    CHECK_THROWS_AS(monte_carlo(plan, spread, {}, 10), std::invalid_argument);
}
