// What is read off a solved circuit?
#pragma once

namespace bankwright::solver {

// The voltage of a node, the current of a branch, or the voltage of one node against another.
struct Gauge {
    enum Kind { node_volts, branch_amps, span_volts } kind = node_volts;
    int number = 0; // node or branch
    int other = -1; // span_volts: the node that it is counted from
};

} // namespace bankwright::solver
