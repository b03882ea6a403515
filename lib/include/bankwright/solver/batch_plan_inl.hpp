// Bodies of batch_plan.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/batch_plan.hpp"
#include "bankwright/solver/load_laws.hpp"
#include "bankwright/solver/validate.hpp"

#include <algorithm>
#include <numeric>
#include <stdexcept>
#include <utility>

namespace bankwright::solver {

BANKWRIGHT_INLINE ParameterLayout lay_out_parameters(Circuit const& pattern) {
    ParameterLayout layout;
    for (std::size_t b = 0; b < pattern.branches.size(); ++b)
        layout.resistance.push_back(layout.count++);
    for (Branch const& branch : pattern.branches)
        layout.emf.push_back(branch.emf != 0.0 ? layout.count++ : -1);
    for (Load const& load : pattern.loads) {
        layout.load.push_back(layout.count);
        for_each_number(load.law, [&](double) { ++layout.count; });
    }
    return layout;
}

BANKWRIGHT_INLINE BatchPlan compile(Circuit const& pattern, std::vector<int> wanted) {
    if (!is_valid(pattern)) throw std::invalid_argument("the circuit to plan for is not valid");
    for (int node : wanted)
        if (node < 0 || node >= pattern.nodes) throw std::invalid_argument("a wanted node is not in the circuit");
    BatchPlan plan;
    plan.pattern = pattern;
    plan.topology = topology(pattern);
    plan.layout = lay_out_parameters(pattern);
    plan.wanted = std::move(wanted);
    if (plan.wanted.empty()) {
        plan.wanted.resize(as_index(pattern.nodes));
        std::iota(plan.wanted.begin(), plan.wanted.end(), 0);
    }
    auto const merged = [&](int node) { return plan.topology.merged[as_index(node)]; };

    for (std::size_t l = 0; l < pattern.loads.size(); ++l) // a current inside one node is of no concern to voltages
        if (plan.topology.load_feed[l] == Feed::port && !std::holds_alternative<ConstantCurrent>(pattern.loads[l].law))
            plan.port_loads.push_back(static_cast<int>(l));
    if (plan.port_loads.size() > 1) {
        plan.loads = LoadMethod::ports;
        Circuit linear = pattern;
        for (Load& load : linear.loads)
            if (!std::holds_alternative<ConstantCurrent>(load.law)) load.law = ConstantCurrent{};
        auto seen = plan.wanted;
        for (int l : plan.port_loads) {
            seen.push_back(pattern.loads[as_index(l)].plus);
            seen.push_back(pattern.loads[as_index(l)].minus);
        }
        plan.linear = std::make_shared<BatchPlan const>(compile(linear, std::move(seen)));
        return plan;
    }
    if (plan.port_loads.size() == 1) {
        plan.loads = LoadMethod::formula;
        plan.formula_load = plan.port_loads.front();
    }

    // The one load's minus end is its island's root and its plus end the last pivot, so that what is left before the
    // last step is the network as the load sees it.
    std::vector<int> roots = plan.topology.root;
    int last = plan.wanted.size() == 1 ? merged(plan.wanted[0]) : -1; // its volts need no way back
    if (plan.formula_load >= 0) {
        Load const& load = pattern.loads[as_index(plan.formula_load)];
        roots[as_index(plan.topology.island[as_index(load.minus)])] = merged(load.minus);
        last = merged(load.plus);
    }
    std::vector<Line> wires(plan.topology.lines);
    wires.resize(static_cast<std::size_t>(std::count_if(
        plan.topology.branch_line.begin(), plan.topology.branch_line.end(), [](int l) { return l >= 0; })));
    plan.elimination = plan_elimination(plan.topology.merged_nodes, wires, roots, last);
    std::vector<char> needed(as_index(plan.topology.merged_nodes), 0);
    for (int node : plan.wanted)
        needed[as_index(merged(node))] = 1;
    if (plan.formula_load >= 0)
        for (int root : plan.topology.root) // the volts of the proper root are subtracted from all others
            needed[as_index(root)] = 1;
    plan.program = write_program(pattern, plan.topology, plan.elimination, plan.layout, needed, plan.formula_load >= 0);
    return plan;
}

BANKWRIGHT_INLINE std::vector<double> parameters_of(BatchPlan const& plan, Circuit const& circuit) {
    std::vector<double> values(as_index(plan.layout.count));
    auto const fits = [](bool good) {
        if (!good) throw std::invalid_argument("the circuit is not of the plan's kind");
    };
    fits(circuit.branches.size() == plan.pattern.branches.size() && circuit.loads.size() == plan.pattern.loads.size());
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        values[as_index(plan.layout.resistance[b])] = circuit.branches[b].resistance;
        fits(plan.layout.emf[b] >= 0 || circuit.branches[b].emf == 0.0);
        if (plan.layout.emf[b] >= 0) values[as_index(plan.layout.emf[b])] = circuit.branches[b].emf;
    }
    for (std::size_t l = 0; l < circuit.loads.size(); ++l) {
        fits(circuit.loads[l].law.index() == plan.pattern.loads[l].law.index());
        auto place = as_index(plan.layout.load[l]);
        for_each_number(circuit.loads[l].law, [&](double number) { values[place++] = number; });
    }
    return values;
}

BANKWRIGHT_INLINE Circuit circuit_of(BatchPlan const& plan, double const* parameters) {
    Circuit circuit = plan.pattern;
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        circuit.branches[b].resistance = parameters[plan.layout.resistance[b]];
        if (plan.layout.emf[b] >= 0) circuit.branches[b].emf = parameters[plan.layout.emf[b]];
    }
    for (std::size_t l = 0; l < circuit.loads.size(); ++l) {
        circuit.loads[l].law = with_numbers(circuit.loads[l].law, parameters + plan.layout.load[l], 1);
    }
    return circuit;
}

} // namespace bankwright::solver
