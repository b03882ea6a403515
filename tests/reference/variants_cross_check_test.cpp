// Variants of one circuit against each of them solved anew in quadruple precision. What an update claims is held to its
// own bound; what it does not claim must have been solved afresh.
#include "bankwright/solver/variants.hpp"
#include "reference/slow_solver.hpp"
#include "support/bank_networks.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using random_circuits::Dice;

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

struct Seen {
    int updated = 0, afresh = 0;
    double worst = 0.0;         // relative to the largest voltage or emf
    double most_of_bound = 0.0; // what the true error is of its bound
};

double largest_of(Circuit const& base) {
    double largest = 1e-6; // where nothing flows quadruple precision leaves noise of its own
    for (Branch const& b : base.branches)
        largest = std::max(largest, std::abs(b.emf));
    for (auto v : slow::solve(base).volts)
        largest = std::max(largest, std::abs(static_cast<double>(v)));
    return largest;
}

void compare(Variants const& variants, double largest, std::vector<Change> const& changes, std::size_t each,
             Seen& seen) {
    std::size_t const count = changes.size() / each, width = at(variants.width());
    std::vector<double> volts(count * width);
    std::vector<VariantAnswer> answers(count);
    variants.solve(changes.data(), each, count, volts.data(), answers.data());
    for (std::size_t v = 0; v < count; ++v) {
        auto const theirs = slow::solve(variants.circuit(changes.data() + v * each, each));
        REQUIRE(answers[v].status == Status::solved);
        double off = 0.0, size = largest;
        for (std::size_t n = 0; n < theirs.volts.size(); ++n) {
            off = std::max(off, std::abs(static_cast<double>(volts[v * width + n] - theirs.volts[n])));
            size = std::max(size, std::abs(static_cast<double>(theirs.volts[n])));
        }
        ++(answers[v].updated ? seen.updated : seen.afresh);
        if (!answers[v].updated) continue;
        seen.worst = std::max(seen.worst, off / size);
        seen.most_of_bound = std::max(seen.most_of_bound, off / (answers[v].error + 1e-25));
    }
}

constexpr double nothing = std::numeric_limits<double>::infinity();

// A branch of the circuit moved, removed, made worse or better, turned, or one more.
Change some_change(Dice& dice, Circuit const& c, random_circuits::Recipe const& recipe) {
    int const b = dice.below(static_cast<int>(c.branches.size()));
    Change change{b, c.branches[at(b)]};
    switch (dice.below(5)) {
    case 0:
        (dice.chance(0.5) ? change.now.from : change.now.to) = dice.below(c.nodes);
        break;
    case 1:
        change.now.resistance = nothing;
        break;
    case 2:
        change.now.resistance = dice.log_between(recipe.low_ohms, recipe.high_ohms);
        break;
    case 3:
        change.now.emf = -change.now.emf;
        break;
    default:
        change.branch = -1;
        change.now = {dice.below(c.nodes), dice.below(c.nodes), dice.log_between(recipe.low_ohms, recipe.high_ohms),
                      dice.between(-12.0, 12.0)};
    }
    return change;
}

Seen random_variants(std::uint64_t seed, int circuits, int most, random_circuits::Recipe const& recipe) {
    Dice dice(seed);
    Seen seen;
    for (int i = 0; i < circuits; ++i) {
        Circuit const base = random_circuits::circuit(dice, recipe);
        if (base.branches.empty()) continue;
        Variants const variants(base);
        double const largest = largest_of(base);
        auto const each = at(1 + dice.below(most));
        for (int v = 0; v < 8; ++v) {
            std::vector<Change> changes;
            while (changes.size() < each) {
                Change const next = some_change(dice, base, recipe);
                bool const taken = std::any_of(changes.begin(), changes.end(), [&](Change const& c) {
                    return c.branch >= 0 && c.branch == next.branch;
                });
                if (!taken || next.branch < 0)
                    changes.push_back(next);
                else
                    changes.push_back({-1, {0, 0, nothing, 0.0}}); // nothing instead
            }
            compare(variants, largest, changes, each, seen);
        }
    }
    MESSAGE("updated ", seen.updated, ", afresh ", seen.afresh, ", worst ", seen.worst, ", of its bound ",
            seen.most_of_bound);
    return seen;
}

} // namespace

TEST_CASE("each end of each link of a bank on every other post, the bank turned link by link and each link missing") {
    Circuit const base = bank_networks::bank(3, 4);
    Variants const variants(base);
    std::vector<Change> changes;
    for (std::size_t b = 0; b < base.branches.size(); b += 3) // a third of the 43, in quadruple precision
        for (int post = 0; post < base.nodes; post += 4) {
            Change moved{static_cast<int>(b), base.branches[b]};
            moved.now.to = post;
            changes.push_back(moved);
        }
    for (std::size_t b = 0; b < base.branches.size(); b += 2) {
        Change turned{static_cast<int>(b), base.branches[b]};
        turned.now.emf = -turned.now.emf;
        changes.push_back(turned);
        turned.now.resistance = nothing;
        changes.push_back(turned);
    }
    Seen seen;
    compare(variants, largest_of(base), changes, 1, seen);
    MESSAGE("updated ", seen.updated, ", afresh ", seen.afresh, ", worst ", seen.worst, ", of its bound ",
            seen.most_of_bound);
    CHECK(seen.worst < 1e-12);
    CHECK(seen.most_of_bound < 1.0);
    CHECK(seen.afresh < 25); // a lead that goes leaves its end alone
}

TEST_CASE("random variants of ordinary circuits hold their bound, and few need a fresh solve") {
    Seen const seen = random_variants(91, 150, 3, {.max_nodes = 8, .connected = true});
    CHECK(seen.worst < 1e-10);
    CHECK(seen.most_of_bound < 1.0);
    CHECK(seen.updated > 2 * seen.afresh);
}

TEST_CASE("over twelve decades of resistance what is claimed is within its bound") {
    Seen const seen = random_variants(92, 150, 3, {.max_nodes = 8, .low_ohms = 1e-6, .high_ohms = 1e6});
    CHECK(seen.worst < 1e-10);
    CHECK(seen.most_of_bound < 1.0);
    CHECK(seen.updated > 300);
    CHECK(seen.afresh > 100);
}

// The only way but one, which resists ever more: the determinant of its removal falls with it.
TEST_CASE(
    "a link without which the circuit all but falls apart is updated as long as that is good, then solved afresh") {
    int updated = 0, afresh = 0;
    for (double ohms = 1e-2; ohms < 1e13; ohms *= 10.0) {
        Circuit const base{.nodes = 4,
                           .branches = {{0, 1, 0.005, 12.6}, {1, 2, 0.001, 0.0}, {1, 2, ohms, 5.0}, {2, 3, 0.01, 0.0}},
                           .joins = {},
                           .loads = {},
                           .reference = 0};
        Seen seen;
        compare(Variants(base), 12.6, {{1, {1, 2, nothing, 0.0}}}, 1, seen);
        CHECK(seen.worst < 1e-10);
        CHECK(seen.most_of_bound < 1.0);
        updated += seen.updated;
        afresh += seen.afresh;
    }
    MESSAGE("updated ", updated, ", afresh ", afresh);
    CHECK(updated >= 3);
    CHECK(afresh >= 5);
}
