// In which order are the nodes eliminated, and what touches what on the way? The symbolic half of star-mesh
// elimination: made once for a set of lines, then any number of value sets stream through it.
//
// Every edge of the filled graph has a slot. Nodes are numbered by their place in the order, an edge runs from its
// earlier to its later end, and the edges of one pivot lie side by side:
//     slots [first, first + degree) of pivot k are the edges k -> later[first], k -> later[first + 1], ...
// with the later ends in the order of elimination. Eliminating k adds to the edge between each pair of its later ends;
// the slots of these, for the pairs (0,1) (0,2) .. (0,d-1) (1,2) .. in turn, are pairs[pair_first ...].
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/topology.hpp"

#include <memory>
#include <vector>

namespace bankwright::solver {

struct Pivot {
    int node = 0;
    int first = 0; // its first slot
    int degree = 0;
    int pair_first = 0; // index into pairs
};

struct EliminationPlan {
    int nodes = 0;
    std::vector<Pivot> pivots;   // in order; roots are never eliminated
    std::vector<int> later;      // by slot: the node at the later end
    std::vector<int> pairs;      // slots
    std::vector<int> slot;       // by line
    std::vector<char> backwards; // by line: 1 if it runs from its later to its earlier end
    std::vector<int> roots;
    int slots() const { return static_cast<int>(later.size()); }
};

// Minimum-degree order (ties: lowest number). `roots`: one node of each connected part. No line may be a loop. `last`:
// a node that is eliminated after all others, if it is no root.
EliminationPlan plan_elimination(int nodes, std::vector<Line> const& lines, std::vector<int> const& roots,
                                 int last = -1);

// The topology's own plan, or one made now.
std::shared_ptr<EliminationPlan const> plan_of(Topology const& topology);

// The topology with its plan, if it is not too large for star-mesh elimination: for more than a few solves on it.
Topology with_plan(Topology topology, int star_mesh_limit);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/linear/elimination_plan_inl.hpp"
#endif
