// One kernel, over and over, for an instruction counter: kernel_counts KERNEL TIMES prints the banks solved.
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "bankwright/solver/monte_carlo.hpp"
#include "support/bank_networks.hpp"

using namespace bankwright::solver;

namespace {

double run_block(BatchPlan const& plan, InstructionSet set, int times) {
    Block block(plan, set);
    std::vector<double> const row = parameters_of(plan, plan.pattern);
    for (int p = 0; p < plan.parameters(); ++p)
        std::fill_n(block.parameter(p), lanes, row[static_cast<std::size_t>(p)]);
    for (int i = 0; i < times; ++i)
        block.solve();
    return block.volts(0)[0];
}

double run_rows(BatchPlan const& plan, InstructionSet set, int times) {
    std::vector<double> rows, volts(static_cast<std::size_t>(times * lanes * plan.pattern.nodes));
    std::vector<double> const row = parameters_of(plan, plan.pattern);
    for (int i = 0; i < 110 * lanes; ++i) // the same number whatever `times`, so that filling them cancels
        rows.insert(rows.end(), row.begin(), row.end());
    solve_rows(plan, rows.data(), static_cast<std::size_t>(times * lanes), volts.data(), {.set = set});
    return volts[0];
}

double run_samples(BatchPlan const& plan, InstructionSet set, int times) {
    std::vector<double> const row = parameters_of(plan, plan.pattern);
    Spread const spread{row, std::vector<double>(row.size(), 0.1)};
    return monte_carlo(plan, spread, {{Gauge::node_volts, plan.pattern.loads[0].plus}},
                       static_cast<std::size_t>(times * lanes), {.set = set})[0]
        .mean;
}

} // namespace

int main(int count, char** words) {
    if (count != 3) return 2;
    std::string_view const kernel = words[1];
    int const times = std::atoi(words[2]);
    BatchPlan const plan = compile(bank_networks::bank(3, 4));
    double volts = 0.0;
    for (auto [label, set] :
         {std::pair{"-portable", InstructionSet::portable}, std::pair{"-avx2", InstructionSet::avx2}}) {
        if (!runs_here(set)) continue;
        if (kernel == "block" + std::string(label)) volts = run_block(plan, set, times);
        if (kernel == "rows" + std::string(label)) volts = run_rows(plan, set, times);
        if (kernel == "samples" + std::string(label)) volts = run_samples(plan, set, times);
    }
    if (volts == 0.0) return 77;
    std::printf("%d\n", times * lanes);
}
