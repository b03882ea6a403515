#include "bankwright/solver/variants.hpp"
#include "support/bank_networks.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using random_circuits::Dice;

namespace {

constexpr double nothing = std::numeric_limits<double>::infinity();

struct Solved {
    VariantAnswer answer;
    std::vector<double> volts;
};
Solved solved(Variants const& variants, std::vector<Change> const& changes) {
    Solved s{{}, std::vector<double>(static_cast<std::size_t>(variants.width()))};
    variants.solve(changes.data(), changes.size(), 1, s.volts.data(), &s.answer);
    return s;
}

// Two batteries side by side behind a lead, feeding 1 ohm.
Circuit pair_of_batteries() {
    return {.nodes = 4,
            .branches = {{0, 1, 0.1, 12.0}, {0, 2, 0.1, 12.0}, {1, 2, 0.2, 0.0}, {2, 3, 0.05, 0.0}, {3, 0, 1.0, 0.0}},
            .joins = {},
            .loads = {},
            .reference = 0};
}

// The same bank with every voltage `volts` times and every resistance `ohms` times as large: powers of two, which
// change no digit.
void check_scaled(double volts, double ohms) {
    auto const scaled = [&](Branch b) {
        b.emf *= volts;
        b.resistance *= ohms;
        return b;
    };
    Circuit base = bank_networks::bank(3, 4);
    base.loads[0].law = ConstantPower{2000.0};
    Circuit other = base;
    std::transform(base.branches.begin(), base.branches.end(), other.branches.begin(), scaled);
    other.loads[0].law = ConstantPower{2000.0 * volts * volts / ohms};
    Variants const variants(base), others(other);
    auto const width = static_cast<std::size_t>(variants.width());
    std::vector<double> row(width), other_row(width);
    for (std::size_t each : {1U, 2U, 3U}) {
        std::vector<Change> changes, other_changes;
        for (int b : {0, 14, 20}) {
            Branch now = base.branches[static_cast<std::size_t>(b)];
            now.resistance *= 3.0;
            now.emf *= 0.9;
            changes.push_back({b, now});
            other_changes.push_back({b, scaled(now)});
        }
        VariantAnswer one, its;
        variants.solve(changes.data(), each, 1, row.data(), &one);
        others.solve(other_changes.data(), each, 1, other_row.data(), &its);
        REQUIRE(one.updated);
        CHECK(one.error > 0.0);
        CHECK(its.error == volts * one.error);
        for (int n = 0; n < base.nodes; ++n)
            CHECK(other_row[static_cast<std::size_t>(n)] == volts * row[static_cast<std::size_t>(n)]);
    }
}

} // namespace

TEST_CASE("a variant without a change is the base") {
    Variants const variants(pair_of_batteries());
    auto const base = solve(pair_of_batteries());
    VariantAnswer answer;
    std::vector<double> volts(static_cast<std::size_t>(variants.width()));
    variants.solve(nullptr, 0, 1, volts.data(), &answer);
    CHECK(answer.updated);
    for (std::size_t n = 0; n < base.volts.size(); ++n)
        CHECK(volts[n] == doctest::Approx(base.volts[n]).epsilon(1e-14));
}

TEST_CASE("where a removed lead leaves islands the circuit is solved afresh, and they count from their own nodes") {
    Variants const variants(pair_of_batteries());
    auto const idle = solved(variants, {{3, {2, 3, nothing, 0.0}}}); // the load hangs on by its other end
    CHECK(idle.answer.updated);
    CHECK(std::abs(idle.volts[3]) <= idle.answer.error);
    auto const apart = solved(variants, {{3, {2, 3, nothing, 0.0}}, {4, {3, 0, nothing, 0.0}}});
    CHECK_FALSE(apart.answer.updated);
    CHECK(apart.volts[3] == 0.0);
    CHECK(apart.volts[1] == doctest::Approx(12.0));
    auto const moved = solved(variants, {{3, {1, 3, 0.05, 0.0}}}); // the lead on the other battery: nothing falls apart
    CHECK(moved.answer.updated);
}

TEST_CASE("a branch between two islands is beyond an update") {
    Circuit base = pair_of_batteries();
    base.nodes = 6;
    base.branches.push_back({4, 5, 1.0, 5.0});
    Variants const variants(base);
    auto const joined = solved(variants, {{-1, {0, 4, 1.0, 0.0}}});
    CHECK_FALSE(joined.answer.updated);
    CHECK(joined.volts[5] == doctest::Approx(5.0));
    CHECK(solved(variants, {{-1, {4, 5, 1.0, 0.0}}}).volts[5] == doctest::Approx(2.5));
    CHECK(solved(variants, {{-1, {4, 5, 1.0, 0.0}}}).answer.updated);
}

TEST_CASE("a caller's mistake throws, a bad number is a status") {
    Variants const variants(pair_of_batteries());
    CHECK_THROWS_AS(solved(variants, {{5, {0, 1, 1.0, 0.0}}}), std::invalid_argument);
    CHECK_THROWS_AS(solved(variants, {{1, {0, 1, 1.0, 0.0}}, {1, {0, 2, 1.0, 0.0}}}), std::invalid_argument);
    for (Branch const& bad : {Branch{0, 7, 1.0, 0.0}, Branch{0, 1, 0.0, 0.0}, Branch{0, 1, -1.0, 0.0},
                              Branch{0, 1, std::nan(""), 0.0}, Branch{0, 1, 1.0, nothing}, Branch{0, 1, 5e-324, 0.0}}) {
        auto const answer = solved(variants, {{0, bad}});
        CHECK(answer.answer.status == Status::bad_circuit);
        CHECK(std::isnan(answer.volts[1]));
    }
    Circuit wrong = pair_of_batteries();
    wrong.branches[0].resistance = 0.0;
    CHECK(solved(Variants(wrong), {{1, {0, 2, 1.0, 0.0}}}).answer.status == Status::bad_circuit);
    CHECK(solved(Variants(wrong), {{0, {0, 1, 0.1, 12.0}}}).answer.status == Status::solved);
}

TEST_CASE("a branch moved to a node that is not there is no circuit") {
    Circuit const base = bank_networks::bank(3, 4);
    Variants const variants(base);
    std::vector<double> volts(static_cast<std::size_t>(variants.width()));
    for (int node : {-1, base.nodes, 1'000'000})
        for (bool const is_from : {true, false})
            for (double ohms : {base.branches[12].resistance, 0.001}) {
                Change change{12, base.branches[12]};
                change.now.resistance = ohms;
                (is_from ? change.now.from : change.now.to) = node;
                VariantAnswer answer;
                variants.solve(&change, 1, 1, volts.data(), &answer);
                CHECK(answer.status == Status::bad_circuit);
                Change const added{-1, change.now};
                variants.solve(&added, 1, 1, volts.data(), &answer);
                CHECK(answer.status == Status::bad_circuit);
            }
}

TEST_CASE("a millionth of every voltage has a millionth of the bound, whatever the rank of the change") {
    check_scaled(0x1p-20, 1.0);
}

TEST_CASE("a thousand times every resistance has the same bound, whatever the rank of the change") {
    check_scaled(1.0, 0x1p10);
}

TEST_CASE("every instruction set and any number of variants at once give one answer, joins and all") {
    Circuit base = bank_networks::bank(3, 2);
    base.nodes += 2;
    base.joins.push_back({base.nodes - 2, 3});
    base.joins.push_back({base.nodes - 1, 7});
    std::vector<Change> changes;
    for (int b = 0; b < 12; ++b)
        for (int post = 0; post < 5; ++post) {
            changes.push_back({b, base.branches[static_cast<std::size_t>(b)]});
            changes.back().now.from = post == 4 ? base.nodes - 1 : post;
        }
    for (auto set : {InstructionSet::portable, InstructionSet::avx2, InstructionSet::avx512}) {
        VariantOptions options;
        options.set = set; // one that is not here is replaced
        Variants const variants(base, options);
        auto const width = static_cast<std::size_t>(variants.width());
        std::vector<double> volts(changes.size() * width);
        std::vector<VariantAnswer> answers(changes.size());
        variants.solve(changes.data(), 1, changes.size(), volts.data(), answers.data());
        for (std::size_t v = 0; v < changes.size(); ++v) {
            auto const fresh = solve(variants.circuit(&changes[v], 1));
            REQUIRE(answers[v].status == fresh.status);
            for (std::size_t n = 0; n < fresh.volts.size(); ++n)
                CHECK(std::abs(volts[v * width + n] - fresh.volts[n]) < 1e-10 * 50.0);
        }
    }
}

TEST_CASE("loads of every law settle on the changed circuit as on a fresh one") {
    Dice dice(7);
    int updated = 0, afresh = 0;
    for (int i = 0; i < 300; ++i) {
        Circuit base =
            random_circuits::circuit(dice, {.max_nodes = 7, .high_ohms = 1.0, .max_loads = 1, .connected = true});
        random_circuits::add_loads(dice, base, 3);
        if (base.branches.empty()) continue;
        Variants const variants(base);
        int const b = dice.below(static_cast<int>(base.branches.size()));
        Change change{b, base.branches[static_cast<std::size_t>(b)]};
        change.now.to = dice.below(base.nodes);
        if (dice.chance(0.3)) change.now.resistance = dice.chance(0.5) ? nothing : 0.02;
        auto const ours = solved(variants, {change});
        auto const fresh = solve(variants.circuit(&change, 1));
        REQUIRE(ours.answer.status == fresh.status);
        if (fresh.status != Status::solved) continue;
        ++(ours.answer.updated ? updated : afresh);
        double largest = 1.0;
        for (double v : fresh.volts)
            largest = std::max(largest, std::abs(v));
        for (std::size_t n = 0; n < fresh.volts.size(); ++n)
            CHECK(std::abs(ours.volts[n] - fresh.volts[n]) <
                  1e-9 * largest); // settled to 1e-12 behind up to three ports
    }
    MESSAGE("updated ", updated, ", afresh ", afresh);
    CHECK(updated > 100);
}

TEST_CASE("a set of variants is moved as a whole") {
    Variants first(pair_of_batteries());
    std::vector<Change> const cut{{2, {1, 2, nothing, 0.0}}};
    auto const before = solved(first, cut).volts;
    Variants second(std::move(first));
    CHECK(solved(second, cut).volts == before);
    Variants third(bank_networks::bank(3, 4));
    third = std::move(second);
    CHECK(solved(third, cut).volts == before);
}

TEST_CASE("the same wiring answers to an ampere between two nodes, with a change and without") {
    Variants const variants(pair_of_batteries());
    auto circuit = pair_of_batteries();
    for (auto& branch : circuit.branches)
        branch.emf = 0.0;
    for (auto const& [red, black] : {std::pair(1, 2), std::pair(3, 0), std::pair(2, 1)}) {
        auto const answering = variants.answering(red, black);
        circuit.loads = {{black, red, ConstantCurrent{1.0}}};
        for (bool const changed : {false, true}) {
            Change const change{3, {2, 3, 0.07, 0.0}};
            auto const found = changed ? solved(answering, {change}) : solved(answering, {});
            auto wiring = circuit;
            if (changed) wiring.branches[3] = change.now;
            auto const expected = solve(wiring).volts;
            REQUIRE(found.answer.updated);
            CHECK(found.volts[static_cast<std::size_t>(red)] - found.volts[static_cast<std::size_t>(black)] ==
                  doctest::Approx(expected[static_cast<std::size_t>(red)] - expected[static_cast<std::size_t>(black)])
                      .epsilon(1e-13));
            for (std::size_t n = 0; n < expected.size(); ++n)
                CHECK(std::abs(found.volts[n] - expected[n]) < 1e-14);
        }
    }
}

TEST_CASE("several variants of several changes at once are each as by itself") {
    Variants const variants(pair_of_batteries());
    auto const each_is_its_own = [&](std::size_t each, std::vector<Change> const& changes) {
        std::size_t const count = changes.size() / each, width = static_cast<std::size_t>(variants.width());
        std::vector<double> rows(count * width), alone(width);
        std::vector<VariantAnswer> answers(count);
        variants.solve(changes.data(), each, count, rows.data(), answers.data());
        for (std::size_t v = 0; v < count; ++v) {
            VariantAnswer answer;
            variants.solve(changes.data() + v * each, each, 1, alone.data(), &answer);
            CHECK(answers[v].status == answer.status);
            auto const expected = solve(variants.circuit(changes.data() + v * each, each));
            REQUIRE(expected.status == Status::solved);
            for (std::size_t n = 0; n < expected.volts.size(); ++n)
                CHECK(rows[v * width + n] == doctest::Approx(expected.volts[n]).epsilon(1e-9));
        }
    };
    auto const base = pair_of_batteries();
    auto const with_ohms = [&](int branch, double ohms) {
        auto now = base.branches[static_cast<std::size_t>(branch)];
        now.resistance = ohms;
        return Change{branch, now};
    };
    std::vector<Change> twos, threes, apart;
    for (int v = 1; v <= 20; ++v) {
        for (int branch : {3, 4})
            twos.push_back(with_ohms(branch, 0.01 * v + 0.003 * branch));
        for (int branch : {2, 3, 4})
            threes.push_back(with_ohms(branch, 0.02 * v + 0.003 * branch));
        for (auto const& change :
             {Change{0, {0, 1, 0.1, 12.0 + 0.05 * v}}, with_ohms(3, nothing), with_ohms(4, nothing)})
            apart.push_back(change);
    }
    each_is_its_own(2, twos);   // in lanes
    each_is_its_own(3, threes); // by itself
    each_is_its_own(3, apart);  // afresh
}
