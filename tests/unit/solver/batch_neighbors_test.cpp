// Whoever cuts a sweep into chunks, or spreads it over machines, wants the same answer to the last bit: what a bank
// answers hangs neither on the lane it stands in nor on the banks beside it.
#include "bankwright/solver/batch.hpp"
#include "support/random_circuits.hpp"

#include <cstring>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

std::vector<double> solved(BatchPlan const& plan, std::vector<double> const& rows, InstructionSet set) {
    std::size_t const banks = rows.size() / static_cast<std::size_t>(plan.parameters());
    std::vector<double> volts(banks * plan.wanted.size());
    solve_rows(plan, rows.data(), banks, volts.data(), {.set = set});
    return volts;
}

// How many volts of 50 banks change in any bit when the banks move on by one lane, and when each is solved by itself.
int changed_volts(Circuit const& pattern, random_circuits::Dice& dice, InstructionSet set) {
    constexpr std::size_t banks = 50;
    BatchPlan const plan = compile(pattern);
    std::vector<double> rows;
    for (std::size_t i = 0; i < banks; ++i) {
        Circuit bank = pattern;
        for (Branch& branch : bank.branches)
            branch.resistance *= dice.between(0.5, 2.0);
        std::vector<double> const row = parameters_of(plan, bank);
        rows.insert(rows.end(), row.begin(), row.end());
    }
    auto const width = plan.parameters();
    std::size_t const wanted = plan.wanted.size();
    std::vector<double> const together = solved(plan, rows, set);
    std::vector<double> const moved = solved(plan, {rows.begin() + width, rows.end()}, set);
    int changed = 0;
    for (std::size_t i = 0; i < banks; ++i) {
        auto const first = rows.begin() + static_cast<std::ptrdiff_t>(i) * width;
        std::vector<double> const alone = solved(plan, {first, first + width}, set);
        for (std::size_t v = 0; v < wanted; ++v) {
            double const* volts = &together[i * wanted + v];
            changed += std::memcmp(volts, &alone[v], sizeof(double)) != 0;
            changed += i > 0 && std::memcmp(volts, &moved[(i - 1) * wanted + v], sizeof(double)) != 0;
        }
    }
    return changed;
}

} // namespace

TEST_CASE("a bank's answer hangs neither on its lane nor on its neighbors, to the last bit") {
    constexpr random_circuits::Recipe recipe{.max_nodes = 20, .low_ohms = 1e-3, .high_ohms = 1e-1, .connected = true};
    std::vector<Law> const laws{ConstantCurrent{20.0}, ConstantPower{90.0}, SquareLaw{0.02, 0.1, 0.8},
                                LimitedSource{13.0, 8.0}};
    for (InstructionSet set : {InstructionSet::portable, InstructionSet::avx2, InstructionSet::avx512}) {
        if (!runs_here(set)) continue;
        CAPTURE(name(set));
        random_circuits::Dice dice(71);
        for (Law const& law : laws)
            for (int k = 0; k < 40; ++k) {
                Circuit pattern = random_circuits::circuit(dice, recipe);
                for (Load& load : pattern.loads)
                    load.law = law;
                CHECK(changed_volts(pattern, dice, set) == 0);
            }
    }
}
