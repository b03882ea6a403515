// Plan once, solve many: what is fixed when only the numbers of a circuit change.
//
// A plan is made from one circuit, the pattern. Each further bank is a list of parameters in SI units: the resistance
// of every branch, the emf of every branch whose emf in the pattern is not 0, the numbers of every load's law:
//     ConstantCurrent amperes · ConstantPower watts · SquareLaw coefficient, resistance, duty · LimitedSource volts,
//     amperes
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/lanes/lane_program.hpp"
#include "bankwright/solver/linear/elimination_plan.hpp"
#include "bankwright/solver/topology.hpp"

#include <memory>
#include <vector>

namespace bankwright::solver {

// How the loads whose current depends on their voltage are met.
enum class LoadMethod {
    none,    // there are none: one linear solve
    formula, // one load: eliminating all but its two ends leaves a source behind a resistance, solved in closed form
    ports,   // several: the banks are linear in their currents, which Newton's method finds (batch_inl.hpp)
};

struct BatchPlan {
    Circuit pattern;
    Topology topology;
    EliminationPlan elimination;
    ParameterLayout layout;
    LaneProgram program;
    LoadMethod loads = LoadMethod::none;
    int formula_load = -1;                   // the one load, with LoadMethod::formula
    std::vector<int> port_loads;             // the loads at the ports, with LoadMethod::ports
    std::shared_ptr<BatchPlan const> linear; // the same with given currents in their place
    std::vector<int> wanted;                 // nodes whose volts are found
    int parameters() const { return layout.count; }
};

// `wanted`: nodes whose volts will be asked for; empty means all of them. Fewer nodes need less work.
// Throws std::invalid_argument if the pattern is no valid circuit (validate.hpp) or a wanted node is not in it.
BatchPlan compile(Circuit const& pattern, std::vector<int> wanted = {});

// The parameters of a circuit that differs from the pattern in its numbers only, and back.
// Both throw std::invalid_argument if the number of things does not fit.
std::vector<double> parameters_of(BatchPlan const& plan, Circuit const& circuit);
Circuit circuit_of(BatchPlan const& plan, double const* parameters);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/batch_plan_inl.hpp"
#endif
