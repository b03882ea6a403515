// The kernels alone, for whoever changes one: bench_kernels --benchmark_filter=NAME (Google Benchmark). Where a count
// is given in items, it is banks or cells.
#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/linear/pack_network.hpp"
#include "bankwright/solver/port_map.hpp"
#include "bankwright/solver/solve.hpp"
#include "support/bank_networks.hpp"
#include "support/cell_packs.hpp"

#include <algorithm>
#include <vector>

#include <benchmark/benchmark.h>

using namespace bankwright::solver;

namespace {

void lane_block(benchmark::State& state) {
    BatchPlan const plan = compile(bank_networks::bank(3, 4));
    Block block(plan, widest_here());
    std::vector<double> const row = parameters_of(plan, plan.pattern);
    for (int p = 0; p < plan.parameters(); ++p)
        std::fill_n(block.parameter(p), lanes, row[static_cast<std::size_t>(p)]);
    for (auto _ : state) {
        block.solve();
        benchmark::DoNotOptimize(block.volts(0)[0]);
    }
    state.SetItemsProcessed(state.iterations() * static_cast<long>(lanes));
}
BENCHMARK(lane_block);

void one_solve(benchmark::State& state) {
    Circuit circuit = bank_networks::bank(3, 4);
    circuit.loads[0].law = ConstantPower{3000.0};
    Topology const planned = with_plan(topology(circuit), SolveOptions{}.star_mesh_limit);
    for (auto _ : state)
        benchmark::DoNotOptimize(solve(circuit, planned).residual);
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(one_solve);

void map_step(benchmark::State& state) {
    Circuit circuit = bank_networks::bank(3, 4);
    circuit.loads[0].law = ConstantPower{3000.0};
    std::vector<int> sources;
    for (int b = 0; b < 12; ++b)
        sources.push_back(b);
    PortMap map(circuit, topology(circuit), sources, {{}, sources});
    std::vector<double> const emfs(sources.size(), 12.6);
    std::vector<double> amps(map.values());
    double load = 0.0;
    for (auto _ : state) {
        map.solve(emfs.data(), amps.data(), &load);
        benchmark::DoNotOptimize(amps[0]);
    }
    state.SetItemsProcessed(state.iterations());
}
BENCHMARK(map_step);

void pack_of_cells(benchmark::State& state) {
    random_circuits::Dice dice(1);
    int const side = static_cast<int>(state.range(0));
    Circuit const circuit = cell_packs::drawn(side, side, dice);
    Topology const flat = topology(circuit);
    std::vector<double> siemens(flat.lines.size(), 0.0), amps(flat.lines.size(), 0.0);
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        siemens[b] = 1.0 / circuit.branches[b].resistance;
        amps[b] = circuit.branches[b].emf / circuit.branches[b].resistance;
    }
    for (auto _ : state)
        benchmark::DoNotOptimize(PackNetwork(flat.merged_nodes, flat.lines, siemens, flat.root).volts(amps));
    state.SetItemsProcessed(state.iterations() * side * side);
}
BENCHMARK(pack_of_cells)->Arg(32)->Arg(100)->Arg(316);

} // namespace

BENCHMARK_MAIN();
