// Which nodes are one, which hang together, and what lies between them: the part of a circuit that has no numbers.
// Made once, it serves every set of resistances, sources and loads on the same wiring.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"

#include <memory>
#include <vector>

namespace bankwright::solver {

// A place between two merged nodes where current can flow: a branch, or a load that a closed path feeds.
struct Line {
    int from = 0; // merged node
    int to = 0;   // merged node
};

struct EliminationPlan;

// How a load meets the circuit. A closed path counts only if it needs no other load to be closed.
enum class Feed {
    none,    // its ends lie on different islands: it carries nothing
    shorted, // its ends are one node: no voltage
    port,    // it sees a voltage behind a resistance
};

struct Topology {
    std::vector<int> merged; // by node: the merged node that joins make of it
    int merged_nodes = 0;
    std::vector<int> island; // by node; 0 is the reference's island, others in the order of their lowest node
    std::vector<int> root;   // by island: the merged node that counts as 0 V
    std::vector<Line> lines;
    std::vector<int> branch_line;                // by branch: its line, or -1 where both its ends are one node
    std::vector<int> load_line;                  // by load: its line, or -1 where it is not a port
    std::vector<Feed> load_feed;                 // by load
    std::shared_ptr<EliminationPlan const> plan; // of the lines; none: made anew at each solve
};

// Expects a valid circuit (validate.hpp).
Topology topology(Circuit const& circuit);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/topology_inl.hpp"
#endif
