// What is done to which row, in what order? A topology's elimination plan as flat lists of row offsets that a kernel
// walks without a branch on any value (lane_kernels.hpp).
//
// Rows: one that is always zero, one that is never read, the parameters, a conductance or share for each slot of the
// plan, the conductances of branches that share a slot, an injection that turns into a voltage for each pivot.
// Where a row is added to for the first time, the sum is written as zero row + term, so nothing is ever cleared.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/linear/elimination_plan.hpp"
#include "bankwright/solver/topology.hpp"

#include <vector>

namespace bankwright::solver {

// Where each value of a bank stands in its list of parameters, -1 where it has none.
struct ParameterLayout {
    std::vector<int> resistance; // by branch [ohm]
    std::vector<int> emf;        // by branch [V]
    std::vector<int> load;       // by load: the first number of its law
    int count = 0;
};

// All numbers are offsets in doubles from the start of the rows, unless it says otherwise.
struct LaneProgram {
    int rows = 0;            // rows in all
    int zero = 0, scrap = 0; // the row that is always zero; the row that is never read
    int first_parameter = 0;
    std::vector<int> reciprocals; // groups of four: 4 resistances, 4 conductances
    std::vector<int> sums;        // conductance, from, to: to = from + conductance
    std::vector<int> sources;     // conductance, emf, from node (read, write), to node (read, write)
    std::vector<int> currents;    // amperes, plus node (read, write), minus node (read, write)
    std::vector<int> forward;     // a record for each pivot, see lane_kernels.hpp
    std::vector<int> backward;    // the same, last pivot first
    std::vector<int> node;        // by merged node: its row of volts; the zero row for roots, scrap if not wanted
    int port_siemens = 0, port_injection = 0, port_volts = 0; // of the last pivot, if it was left out of `forward`
};

// The kinds of forward record: [degree * 3 + kind, slots, injection read, volts, ...].
enum PivotKind : int {
    pivot_plain,  // then for each neighbor (read, write) of its injection, then for each pair (read, write)
    pivot_rooted, // the same, but the last neighbor is a root and has no injection
    pivot_quiet,  // nothing is injected here: only the pairs
};

// `wanted`: merged nodes whose volts are asked for. `leave_last`: stop before the last pivot, whose one neighbor is
// its root; another hand finds its volts.
LaneProgram write_program(Circuit const& circuit, Topology const& topology, EliminationPlan const& plan,
                          ParameterLayout const& layout, std::vector<char> const& wanted, bool leave_last);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/lanes/lane_program_inl.hpp"
#endif
