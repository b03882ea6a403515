#include "bankwright/solver/batch.hpp"
#include "reference/slow_solver.hpp"
#include "support/bank_networks.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

// Largest error of any voltage on any instruction set of this machine, relative to the largest voltage or source of its
// circuit. `next` gives one circuit after another.
template <class Next>
double worst_error(int count, Next next) {
    double worst = 0.0;
    for (int i = 0; i < count; ++i) {
        Circuit const circuit = next();
        BatchPlan const plan = compile(circuit);
        std::vector<double> const row = parameters_of(plan, circuit);
        slow::Answer const theirs = slow::solve(circuit);
        double largest = 1e-6;
        for (Branch const& b : circuit.branches)
            largest = std::max(largest, std::abs(b.emf));
        for (auto v : theirs.volts)
            largest = std::max(largest, std::abs(static_cast<double>(v)));
        for (InstructionSet set : {InstructionSet::portable, InstructionSet::avx2, InstructionSet::avx512}) {
            if (!runs_here(set)) continue;
            std::vector<double> ours(static_cast<std::size_t>(circuit.nodes));
            solve_rows(plan, row.data(), 1, ours.data(), {.set = set});
            for (std::size_t n = 0; n < ours.size(); ++n)
                worst = std::max(worst, std::abs(static_cast<double>(ours[n] - theirs.volts[n])) / largest);
        }
    }
    return worst;
}

// Batteries of 2.5 to 10 mohm in three strings of two; every conductor anywhere between the limits.
double worst_of_banks(int count, double low_ohms, double high_ohms, std::uint64_t seed) {
    random_circuits::Dice dice(seed);
    return worst_error(count, [&] {
        Circuit circuit = bank_networks::drawn(bank_networks::bank(2, 3), dice);
        for (Branch& b : circuit.branches)
            if (b.emf == 0.0) b.resistance = dice.log_between(low_ohms, high_ohms);
        return circuit;
    });
}

} // namespace

// Reached: 2.1e-15, 7.9e-14, 1.4e-11 over 18 decades, and 1.2e-14 in the last case.
TEST_CASE("lanes agree with nodal analysis in quadruple precision to 1e-14 on banks with ordinary conductors") {
    double const worst = worst_of_banks(300, 1e-4, 8e-3, 1);
    CHECK(worst < 1e-14);
}

TEST_CASE("lanes keep 1e-12 with conductors over six decades of resistance") {
    double const worst = worst_of_banks(300, 1e-6, 1.0, 2);
    CHECK(worst < 1e-12);
}

TEST_CASE("lanes keep 1e-6 with conductors over 18 decades, where elimination with differences has no digit left") {
    double const worst = worst_of_banks(300, 1e-9, 1e9, 3);
    CHECK(worst < 1e-6);
}

// Lanes sum sources at the nodes, so c e of a source behind little resistance blurs what a large resistance brings to
// the same node: the error grows with the ratio of the two. The single solve carries sources along edges and does not
// know it.
TEST_CASE("lanes keep 1e-13 on any circuit with sources anywhere over two decades of resistance") {
    random_circuits::Dice dice(4);
    double const worst =
        worst_error(2000, [&] { return random_circuits::circuit(dice, {.low_ohms = 1e-3, .high_ohms = 1e-1}); });
    CHECK(worst < 1e-13);
}
