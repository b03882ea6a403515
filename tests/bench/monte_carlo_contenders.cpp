// Ours, for monte_carlo_goals.py: the bare kernel on a block that stays where it is, and samples drawn, solved and
// gathered.
#include "bankwright/solver/monte_carlo.hpp"
#include "bench/thread_clock.hpp"
#include "support/bank_networks.hpp"

#include <cstddef>

using namespace bankwright::solver;

namespace {

struct MonteCarlo {
    MonteCarlo(int series, int parallel, InstructionSet which)
        : set(which), plan(compile(bank_networks::bank(series, parallel))), block(plan, which) {
        spread.center = parameters_of(plan, plan.pattern);
        spread.relative.assign(spread.center.size(), 0.1); // every one is drawn
        for (int p = 0; p < plan.parameters(); ++p)
            std::fill_n(block.parameter(p), lanes, spread.center[static_cast<std::size_t>(p)]);
    }
    InstructionSet set;
    BatchPlan plan;
    Spread spread;
    Block block;
    Statistics statistics;
};

} // namespace

extern "C" {

// Null if this processor has not that set: 0 portable, 1 AVX2, 2 AVX-512.
MonteCarlo* monte_carlo_open(int series, int parallel, int set) {
    auto const which = static_cast<InstructionSet>(set);
    return runs_here(which) ? new MonteCarlo(series, parallel, which) : nullptr;
}

// Seconds of this thread for so many samples.
double monte_carlo_bare(MonteCarlo* m, std::size_t samples) {
    double const begin = bench::processor_seconds();
    for (std::size_t done = 0; done < samples; done += lanes)
        m->block.solve();
    return bench::processor_seconds() - begin;
}

// All parameters drawn, mean and deviation of the load's voltage gathered.
double monte_carlo_drawn(MonteCarlo* m, std::size_t samples) {
    double const begin = bench::processor_seconds();
    MonteCarloOptions options;
    options.set = m->set;
    m->statistics =
        monte_carlo(m->plan, m->spread, {{Gauge::node_volts, m->plan.pattern.loads[0].plus}}, samples, options)[0];
    return bench::processor_seconds() - begin;
}

double monte_carlo_mean(MonteCarlo const* m) { return m->statistics.mean; }
double monte_carlo_deviation(MonteCarlo const* m) { return m->statistics.deviation; }

// [V] of the load with everything at its center, after a run of the bare kernel.
double monte_carlo_center(MonteCarlo const* m) { return m->block.volts(m->plan.pattern.loads[0].plus)[0]; }
}
