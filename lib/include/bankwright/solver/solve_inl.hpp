// Bodies of solve.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/balance.hpp"
#include "bankwright/solver/currents/branch_currents.hpp"
#include "bankwright/solver/join_currents.hpp"
#include "bankwright/solver/linear_network.hpp"
#include "bankwright/solver/loads/port_loads.hpp"
#include "bankwright/solver/loads/ports.hpp"
#include "bankwright/solver/solve.hpp"
#include "bankwright/solver/validate.hpp"

#include <cmath>
#include <utility>

namespace bankwright::solver {

BANKWRIGHT_INLINE Solution solve(Circuit const& circuit, Topology const& topology, SolveOptions const& options) {
    Solution solution;
    if (!is_valid(circuit)) return solution;
    solution.island = topology.island;

    std::vector<double> siemens(topology.lines.size(), 0.0), line_amps(topology.lines.size(), 0.0);
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        int const line = topology.branch_line[b];
        if (line < 0) continue;
        siemens[as_index(line)] = 1.0 / circuit.branches[b].resistance;
        line_amps[as_index(line)] = circuit.branches[b].emf / circuit.branches[b].resistance;
    }
    LinearNetwork const network(topology, siemens, options.star_mesh_limit, options.factor_limit);

    // Loads whose current is known, then those that need the rest of the network reduced to their ports.
    solution.load_amps.assign(circuit.loads.size(), 0.0);
    std::vector<std::size_t> port_loads;
    for (std::size_t l = 0; l < circuit.loads.size(); ++l) {
        Law const& law = circuit.loads[l].law;
        auto const* source = std::get_if<LimitedSource>(&law);
        if (topology.load_feed[l] == Feed::shorted && source && source->volts > 0.0)
            solution.load_amps[l] = -source->amperes;
        if (topology.load_feed[l] != Feed::port) continue;
        if (auto const* constant = std::get_if<ConstantCurrent>(&law))
            line_amps[as_index(topology.load_line[l])] = solution.load_amps[l] = constant->amperes;
        else
            port_loads.push_back(l);
    }
    if (!port_loads.empty()) {
        PortCurrents const found =
            port_currents(reduce_to_ports(circuit, topology, network, line_amps, port_loads), options.max_iterations);
        solution.iterations = found.iterations;
        solution.reachable_share = found.reachable_share;
        if (found.status != Status::solved) {
            solution.status = found.status;
            solution.load_amps.clear();
            return solution;
        }
        for (std::size_t p = 0; p < port_loads.size(); ++p)
            line_amps[as_index(topology.load_line[port_loads[p]])] = solution.load_amps[port_loads[p]] = found.amps[p];
    }

    std::vector<double> const merged_volts = network.volts(line_amps);
    solution.volts.reserve(topology.merged.size());
    for (int m : topology.merged)
        solution.volts.push_back(merged_volts[as_index(m)]);
    solution.branch_amps = branch_currents(circuit, topology, network, merged_volts, solution.load_amps);
    solution.join_amps = join_currents(circuit, leaving_currents(circuit, solution), options.star_mesh_limit);
    solution.condition = network.condition();
    solution.residual = current_residual(circuit, solution);
    solution.power_imbalance = power_imbalance(circuit, solution);
    solution.status = std::isfinite(solution.residual + solution.power_imbalance + solution.condition)
                          ? Status::solved
                          : Status::not_converged;
    return solution;
}

BANKWRIGHT_INLINE Solution solve(Circuit const& circuit, SolveOptions const& options) {
    if (!is_valid(circuit)) return {};
    return solve(circuit, topology(circuit), options);
}

} // namespace bankwright::solver
