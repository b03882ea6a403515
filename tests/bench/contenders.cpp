// Our own contenders and the door by which compare.py comes in.
#include "bench/contenders.hpp"

#include "bench/peak.hpp"
#include "bench/thread_clock.hpp"
#include "support/bank_networks.hpp"

#include <algorithm>

namespace bench {

using namespace bankwright::solver;

namespace {

class Ours : public Contender {
public:
    Ours(BatchPlan const& plan, BatchOptions options) : plan_(plan), options_(options) {}
    void solve(double const* parameters, std::size_t count, double* volts) override {
        solve_rows(plan_, parameters, count, volts, options_);
    }

private:
    BatchPlan const& plan_;
    BatchOptions options_;
};

// The kernel alone: the first block's parameters stay where they are and it is solved over and over.
class Resident : public Contender {
public:
    Resident(BatchPlan const& plan, InstructionSet set) : block_(plan, set) {}
    void solve(double const* parameters, std::size_t count, double* volts) override {
        int const banks = static_cast<int>(std::min<std::size_t>(count, lanes));
        auto const width = static_cast<std::size_t>(block_.plan().parameters());
        for (int p = 0; p < block_.plan().parameters(); ++p)
            for (int lane = 0; lane < lanes; ++lane)
                block_.parameter(p)[lane] = parameters[static_cast<std::size_t>(std::min(lane, banks - 1)) * width +
                                                       static_cast<std::size_t>(p)];
        for (std::size_t done = 0; done < count; done += lanes)
            block_.solve(banks);
        for (int node = 0; node < block_.plan().pattern.nodes; ++node)
            for (int lane = 0; lane < banks; ++lane)
                volts[lane * block_.plan().pattern.nodes + node] = block_.volts(node)[lane];
    }

private:
    Block block_;
};

} // namespace

std::vector<int> rows_by_node(BatchPlan const& plan) {
    std::vector<int> rows;
    for (int node = 0, next = 0; node < plan.pattern.nodes; ++node)
        rows.push_back(node == plan.pattern.reference ? -1 : next++);
    return rows;
}

std::unique_ptr<Contender> make_ours(BatchPlan const& plan, std::string_view name) {
    if (name == "ours") return std::make_unique<Ours>(plan, BatchOptions{});
    if (name == "ours-threads") return std::make_unique<Ours>(plan, BatchOptions{.threads = 2});
    if (name == "ours-resident") return std::make_unique<Resident>(plan, widest_here());
    for (auto [set, label] : {std::pair{InstructionSet::portable, "-portable"},
                              std::pair{InstructionSet::avx2, "-avx2"}, std::pair{InstructionSet::avx512, "-avx512"}}) {
        if (!runs_here(set)) continue;
        if (name == "ours" + std::string(label)) return std::make_unique<Ours>(plan, BatchOptions{.set = set});
        if (name == "ours-resident" + std::string(label)) return std::make_unique<Resident>(plan, set);
    }
    return nullptr;
}

std::unique_ptr<Contender> make_contender(BatchPlan const& plan, std::string_view name) {
    for (auto make : {make_ours, make_eigen, make_klu})
        if (auto contender = make(plan, name)) return contender;
    return nullptr;
}

struct Bench {
    explicit Bench(int series, int parallel) : plan(compile(bank_networks::bank(series, parallel))) {}
    BatchPlan plan;
    std::vector<std::pair<std::string, std::unique_ptr<Contender>>> made;
    Contender* find(char const* name) {
        for (auto& [known, contender] : made)
            if (known == name) return contender.get();
        made.emplace_back(name, make_contender(plan, name));
        return made.back().second.get();
    }
};

} // namespace bench

using bankwright::solver::name;
using bankwright::solver::widest_here;
using bench::Bench;

extern "C" {

Bench* bench_open(int series, int parallel) { return new Bench(series, parallel); }
void bench_close(Bench* bench) { delete bench; }
int bench_parameters(Bench const* bench) { return bench->plan.parameters(); }
int bench_nodes(Bench const* bench) { return bench->plan.pattern.nodes; }
int bench_branches(Bench const* bench) { return static_cast<int>(bench->plan.pattern.branches.size()); }
int bench_has(Bench* bench, char const* name) { return bench->find(name) != nullptr; }

// By branch: from, to, the number of its emf among the parameters or -1. Returns the reference node.
int bench_wiring(Bench const* bench, int* from, int* to, int* emf) {
    for (std::size_t b = 0; b < bench->plan.pattern.branches.size(); ++b) {
        from[b] = bench->plan.pattern.branches[b].from;
        to[b] = bench->plan.pattern.branches[b].to;
        emf[b] = bench->plan.layout.emf[b];
    }
    return bench->plan.pattern.reference;
}

// The load's plus node; its minus end is the reference and its current the last parameter.
int bench_load(Bench const* bench) { return bench->plan.pattern.loads[0].plus; }

void bench_draw(Bench const* bench, unsigned seed, std::size_t count, double* rows) {
    random_circuits::Dice dice(seed);
    for (std::size_t i = 0; i < count; ++i) {
        auto const row = parameters_of(bench->plan, bank_networks::drawn(bench->plan.pattern, dice));
        std::copy(row.begin(), row.end(), rows + i * row.size());
    }
}

// Floating-point operations of a sparse LDL^T with one right-hand side for this wiring: what a solve cannot do without.
double bench_flops(Bench const* bench) {
    double flops = 0.0;
    for (auto const& pivot : bench->plan.elimination.pivots) {
        int neighbors = 0;
        for (int i = 0; i < pivot.degree; ++i)
            neighbors += bench->plan.elimination.later[static_cast<std::size_t>(pivot.first + i)] !=
                         bench->plan.topology.root[0];
        flops += 2 + 5 * neighbors + neighbors * (neighbors + 1);
    }
    return flops;
}

double bench_peak(double seconds) {
    double sink = 0.0, flops = 0.0;
    double const begin = bench::processor_seconds();
    double now = begin;
    while (now - begin < seconds) {
        flops += bench::run_peak(widest_here(), 100000, sink);
        now = bench::processor_seconds();
    }
    return sink == 0.5 ? 0.0 : flops / (now - begin);
}

char const* bench_instructions() { return name(widest_here()).data(); }

// Seconds of this thread's processor time for `repeats` runs over all banks.
double bench_run(Bench* bench, char const* name, double const* rows, std::size_t count, int repeats, double* volts) {
    auto* contender = bench->find(name);
    double const begin = bench::processor_seconds();
    for (int i = 0; i < repeats; ++i)
        contender->solve(rows, count, volts);
    return bench::processor_seconds() - begin;
}
}
