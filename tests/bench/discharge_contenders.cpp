// A bank run down by a constant power in fixed steps, each contender with its own way to a step's currents; and a whole
// run of our own.
#include "bankwright/analyses/discharge.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/solver/curve_lanes.hpp"
#include "bankwright/solver/linear/elimination_plan.hpp"
#include "bankwright/solver/port_map.hpp"
#include "bench/thread_clock.hpp"
#include "support/bank_networks.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <vector>

#include <Eigen/SparseCholesky>

using namespace bankwright::solver;
using bench::processor_seconds;

namespace {

constexpr int batteries = 12;          // 3 strings of 4, the first branches of the circuit
constexpr double watts = 3000.0;       // at the load
constexpr double coulombs = 360'000.0; // of each battery
constexpr std::array<double, 5> volts_by_quarter{11.6, 12.0, 12.3, 12.6, 12.9}; // invented

double emf_at(double charge) {
    double const x = std::clamp(charge, 0.0, 1.0) * 4.0;
    auto const i = static_cast<std::size_t>(std::min(x, 3.0));
    return volts_by_quarter[i] + (volts_by_quarter[i + 1] - volts_by_quarter[i]) * (x - static_cast<double>(i));
}

Circuit bank() {
    random_circuits::Dice dice(1);
    Circuit c = bank_networks::drawn(bank_networks::bank(3, 4), dice);
    c.loads[0].law = ConstantPower{watts};
    return c;
}

// Battery currents by nodal analysis: a sparse factorization, the open voltage and the load's resistance from it.
class ByEigen {
public:
    ByEigen(Circuit const& circuit, bool once) : circuit_(circuit), once_(once) {
        int const rows = circuit.nodes - 1; // the reference is the last node
        std::vector<Eigen::Triplet<double>> entries;
        for (Branch const& b : circuit.branches) {
            double const g = 1.0 / b.resistance;
            if (b.from < rows) entries.emplace_back(b.from, b.from, g);
            if (b.to < rows) entries.emplace_back(b.to, b.to, g);
            if (b.from < rows && b.to < rows) entries.emplace_back(std::max(b.from, b.to), std::min(b.from, b.to), -g);
        }
        matrix_.resize(rows, rows);
        matrix_.setFromTriplets(entries.begin(), entries.end());
        ldlt_.analyzePattern(matrix_);
        factor();
    }
    void amps(double const* charges, double* amps) {
        if (!once_) factor();
        std::array<double, batteries> emfs{};
        for (std::size_t b = 0; b < batteries; ++b)
            emfs[b] = emf_at(charges[b]);
        Eigen::VectorXd right = Eigen::VectorXd::Zero(matrix_.rows());
        for (int b = 0; b < batteries; ++b) {
            Branch const& branch = circuit_.branches[static_cast<std::size_t>(b)];
            double const source = emfs[static_cast<std::size_t>(b)] / branch.resistance;
            if (branch.from < right.size()) right[branch.from] -= source;
            if (branch.to < right.size()) right[branch.to] += source;
        }
        Eigen::VectorXd const open = ldlt_.solve(right);
        double const volts = open[plus()],
                     drawn = 2.0 * watts / (volts + std::sqrt(volts * volts - 4.0 * ohms_ * watts));
        for (int b = 0; b < batteries; ++b) {
            Branch const& branch = circuit_.branches[static_cast<std::size_t>(b)];
            auto const at = [&](int n) { return n < right.size() ? open[n] - drawn * unit_[n] : 0.0; };
            amps[b] = (at(branch.from) - at(branch.to) + emfs[static_cast<std::size_t>(b)]) / branch.resistance;
        }
    }

private:
    int plus() const { return circuit_.loads[0].plus; }
    void factor() {
        ldlt_.factorize(matrix_);
        Eigen::VectorXd one = Eigen::VectorXd::Zero(matrix_.rows());
        one[plus()] = 1.0;
        unit_ = ldlt_.solve(one);
        ohms_ = unit_[plus()];
    }
    Circuit const& circuit_;
    bool once_;
    double ohms_ = 0.0;
    Eigen::SparseMatrix<double> matrix_;
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> ldlt_;
    Eigen::VectorXd unit_;
};

class ByMap {
public:
    explicit ByMap(Circuit const& circuit)
        : map_(circuit, topology(circuit), numbers(), {{}, numbers()}), curve_(emf_at, {0.0, 0.25, 0.5, 0.75, 1.0}) {}
    void amps(double const* charges, double* amps) {
        double load = 0.0;
        curves_.at(charges, emfs_.data(), [this](std::size_t, double charge) { return curve_.piece(charge); });
        map_.solve(emfs_.data(), amps, &load);
    }

private:
    static std::vector<int> numbers() {
        std::vector<int> all;
        for (int b = 0; b < batteries; ++b)
            all.push_back(b);
        return all;
    }
    PortMap map_;
    bankwright::numeric::PiecewisePolynomial<4> curve_;
    CurveLanes<4> curves_{batteries};
    LaneRows emfs_{1};
};

// Each contender finds the currents of the charges, with its own way to the voltages, too; `charges` lie as LaneRows.
template <class Contender>
double run(Contender contender, int steps, double seconds, double* charges) {
    alignas(64) std::array<double, batteries> amps{}; // in whole lines of the cache, as ours would have it in use
    LaneRows now(1);
    double const share = seconds / coulombs; // [1/A] of a charge, a step
    for (int b = 0; b < batteries; ++b)
        now.data()[b] = 1.0 - 0.004 * b;
    double const begin = processor_seconds();
    for (int step = 0; step < steps; ++step) {
        contender.amps(now.data(), amps.data());
        for (std::size_t b = 0; b < batteries; ++b)
            now.data()[b] -= share * amps[b];
    }
    double const took = processor_seconds() - begin;
    std::copy_n(now.data(), batteries, charges);
    return took;
}

} // namespace

extern "C" {

int discharge_branches() { return static_cast<int>(bank().branches.size()); }

// The wiring, for whoever writes a netlist; returns the load's plus node. The reference is the last node.
int discharge_wiring(int* from, int* to, double* ohms) {
    Circuit const circuit = bank();
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        from[b] = circuit.branches[b].from, to[b] = circuit.branches[b].to;
        ohms[b] = circuit.branches[b].resistance;
    }
    return circuit.loads[0].plus;
}

// Seconds of this thread for `steps` steps; `charges` [1] gets those of the end. Whatever is made once for the run is
// made before the clock starts. Negative for a name that is not known.
double discharge_run(char const* name, int steps, double seconds, double* charges) {
    std::string_view const who = name;
    Circuit const circuit = bank();
    if (who == "ours") return run(ByMap(circuit), steps, seconds, charges);
    if (who == "eigen, factored once") return run(ByEigen(circuit, true), steps, seconds, charges);
    if (who == "eigen, factored each step") return run(ByEigen(circuit, false), steps, seconds, charges);
    return -1.0;
}

// Our own run of a bank file for `seconds`, to `tolerance`; charges at the end. Least seconds of this thread in a few
// runs one after the other (the file is read once, and reading leaves the caches to whoever comes next): of the run
// alone, with network, map and curves made before the clock starts, and in `made` [1] of making those.
double discharge_whole(char const* text, double seconds, double tolerance, double* charges, double* made) {
    auto const bank = bankwright::read(text).bank;
    bankwright::DischargeOptions options;
    options.longest = seconds * bankwright::si::second;
    options.tolerance = tolerance;
    options.samples_apart = 1.0; // the others tell of the ends of their steps, too
    double least = 1e9;
    *made = 1e9;
    for (int run = 0; run < 7; ++run) {
        double const begin = processor_seconds();
        bankwright::internal::DischargeRun prepared(bank, options);
        double const ready = processor_seconds();
        auto const result = prepared.run();
        least = std::min(least, processor_seconds() - ready);
        *made = std::min(*made, ready - begin);
        for (std::size_t b = 0; b < bank.batteries.size(); ++b)
            charges[b] = result.samples.back().charge[b].value();
    }
    return least;
}
}
