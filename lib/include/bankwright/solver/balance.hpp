// Does a solution obey the laws? Kirchhoff's sums and the balance of power, taken from the final numbers.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/solution.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace bankwright::solver {

// [A] by node: what branches and loads carry away from it.
inline std::vector<double> leaving_currents(Circuit const& circuit, Solution const& solution) {
    std::vector<double> leaving(as_index(circuit.nodes), 0.0);
    auto const carry = [&](int from, int to, double amps) {
        leaving[as_index(from)] += amps;
        leaving[as_index(to)] -= amps;
    };
    for (std::size_t b = 0; b < circuit.branches.size(); ++b)
        carry(circuit.branches[b].from, circuit.branches[b].to, solution.branch_amps[b]);
    for (std::size_t l = 0; l < circuit.loads.size(); ++l)
        carry(circuit.loads[l].plus, circuit.loads[l].minus, solution.load_amps[l]);
    return leaving;
}

// [A] the largest sum of currents at any node, joins included.
inline double current_residual(Circuit const& circuit, Solution const& solution) {
    std::vector<double> sum = leaving_currents(circuit, solution);
    for (std::size_t j = 0; j < circuit.joins.size(); ++j) {
        sum[as_index(circuit.joins[j].from)] += solution.join_amps[j];
        sum[as_index(circuit.joins[j].to)] -= solution.join_amps[j];
    }
    double worst = 0.0;
    for (double s : sum)
        worst = std::max(worst, std::abs(s));
    return worst;
}

// [W] what the sources give, less what resistances and loads take.
inline double power_imbalance(Circuit const& circuit, Solution const& solution) {
    double watts = 0.0;
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        double const amps = solution.branch_amps[b];
        watts += amps * (circuit.branches[b].emf - circuit.branches[b].resistance * amps);
    }
    for (std::size_t l = 0; l < circuit.loads.size(); ++l) {
        Load const& load = circuit.loads[l];
        if (solution.island[as_index(load.plus)] != solution.island[as_index(load.minus)]) continue; // carries nothing
        watts -= solution.load_amps[l] * (solution.volts[as_index(load.plus)] - solution.volts[as_index(load.minus)]);
    }
    return watts;
}

} // namespace bankwright::solver
