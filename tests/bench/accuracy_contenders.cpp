// How far our answers are from nodal analysis in quadruple precision, for the goals on accuracy.
#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/solve.hpp"
#include "reference/slow_solver.hpp"
#include "support/bank_networks.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

using namespace bankwright::solver;

// Worst of `count` banks of 3S4P whose conductors lie anywhere between the two resistances: the largest error of any
// node's voltage, relative to the largest voltage. `who`: "one bank" or "lanes".
extern "C" double accuracy_worst(char const* who, int count, double low_ohms, double high_ohms) {
    random_circuits::Dice dice(1);
    double worst = 0.0;
    for (int i = 0; i < count; ++i) {
        Circuit circuit = bank_networks::drawn(bank_networks::bank(3, 4), dice);
        for (Branch& b : circuit.branches)
            if (b.emf == 0.0) b.resistance = dice.log_between(low_ohms, high_ohms);
        std::vector<double> volts(static_cast<std::size_t>(circuit.nodes));
        if (std::string_view(who) == "lanes") {
            BatchPlan const plan = compile(circuit);
            solve_rows(plan, parameters_of(plan, circuit).data(), 1, volts.data());
        } else {
            volts = solve(circuit).volts;
        }
        auto const expected = slow::solve(circuit).volts;
        double largest = 1e-6, wrong = 0.0;
        for (std::size_t n = 0; n < volts.size(); ++n) {
            largest = std::max(largest, std::abs(static_cast<double>(expected[n])));
            wrong = std::max(wrong, std::abs(static_cast<double>(volts[n] - expected[n])));
        }
        worst = std::max(worst, wrong / largest);
    }
    return worst;
}
