// One kernel, over and over, for an instruction counter: kernel_counts KERNEL TIMES prints the banks solved.
#include "bankwright/solver/linear/elimination_plan.hpp"
#include "bankwright/solver/monte_carlo.hpp"
#include "bankwright/solver/port_map.hpp"
#include "bankwright/solver/solve.hpp"
#include "bankwright/solver/variants.hpp"
#include "support/bank_networks.hpp"

#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

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

// Two constant powers, the second at the first rank's posts.
double run_powers(InstructionSet set, int times) {
    Circuit circuit = bank_networks::bank(3, 4);
    circuit.loads[0].law = ConstantPower{2000.0};
    circuit.loads.push_back({1, 0, ConstantPower{300.0}});
    return run_block(compile(circuit), set, times);
}

double run_moved(Circuit const& base, InstructionSet set, int times) {
    Variants const variants(base, {.set = set});
    std::vector<Change> changes;
    for (int post = 2; static_cast<int>(changes.size()) < lanes; post = post % 20 + 1) {
        Branch now = base.branches[12];
        if (post == now.from || post == now.to) continue;
        now.to = post;
        changes.push_back({12, now});
    }
    std::vector<double> volts(static_cast<std::size_t>(variants.width()) * lanes);
    std::vector<VariantAnswer> answers(lanes);
    for (int i = 0; i < times; ++i)
        variants.solve(changes.data(), 1, lanes, volts.data(), answers.data());
    return volts[0] + volts[1];
}

// One bank after the other: a plan made once, and a map from the batteries' voltages.
double run_planned(Circuit circuit, int times) {
    circuit.loads[0].law = ConstantPower{3000.0};
    Topology const planned = with_plan(topology(circuit), SolveOptions{}.star_mesh_limit);
    double volts = 0.0;
    for (int i = 0; i < times * lanes; ++i)
        volts = solve(circuit, planned).volts[0];
    return volts;
}

double run_map(Circuit circuit, InstructionSet set, int times) {
    circuit.loads[0].law = ConstantPower{3000.0};
    std::vector<int> sources;
    for (int b = 0; b < 12; ++b)
        sources.push_back(b);
    PortMap map(circuit, topology(circuit), sources, {{}, sources}, set);
    std::vector<double> const emfs(sources.size(), 12.6);
    std::vector<double> amps(map.values());
    double load = 0.0;
    for (int i = 0; i < times * lanes; ++i)
        map.solve(emfs.data(), amps.data(), &load);
    return load;
}

} // namespace

int main(int count, char** words) {
    if (count != 3) return 2;
    std::string_view const kernel = words[1];
    int const times = std::atoi(words[2]);
    Circuit const bank = bank_networks::bank(3, 4);
    BatchPlan const plan = compile(bank);
    double volts = 0.0;
    if (kernel == "planned") volts = run_planned(bank, times);
    for (auto [label, set] :
         {std::pair{"-portable", InstructionSet::portable}, std::pair{"-avx2", InstructionSet::avx2}}) {
        if (!runs_here(set)) continue;
        if (kernel == "block" + std::string(label)) volts = run_block(plan, set, times);
        if (kernel == "rows" + std::string(label)) volts = run_rows(plan, set, times);
        if (kernel == "samples" + std::string(label)) volts = run_samples(plan, set, times);
        if (kernel == "powers" + std::string(label)) volts = run_powers(set, times);
        if (kernel == "moved" + std::string(label)) volts = run_moved(bank, set, times);
        if (kernel == "map" + std::string(label)) volts = run_map(bank, set, times);
    }
    if (volts == 0.0) return 77;
    std::printf("%d\n", times * lanes);
}
