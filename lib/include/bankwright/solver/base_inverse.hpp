// What does a current from one node to another do to every voltage? All of it at once, for a circuit that is asked
// often: the inverse of its conductance matrix, Z, and what follows from it.
//
// Each number of Z is a sum of positive terms (star_mesh.hpp, with one ampere into each node in turn), and it is found
// in long double: exact to rounding where that is wider than double. So are the resistances between pairs of nodes,
// Z(a,a) + Z(b,b) - 2 Z(a,b), before they are rounded.
#pragma once

#include <vector>

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/topology.hpp"

namespace bankwright::solver {

struct BaseInverse {
    // Loads count only if their current is constant. Keeps no reference.
    BaseInverse(Circuit const& circuit, Topology const& topology);

    int nodes;
    int stride;                // doubles from one row to the next; what lies beyond `nodes` is zero
    LaneRows volts;            // [V] by node
    LaneRows own;              // [ohm] by node: Z on the diagonal
    LaneRows ohms;             // Z [ohm] row by row, by node and node: 0 between islands
    LaneRows across;           // [ohm] row by row: the resistance between two nodes of one island
    double largest = 0.0;      // [V] of all voltages and emfs: what errors are measured against
    double wide_epsilon = 0.0; // relative error of Z before it was rounded

    double const* row(LaneRows const& of, int node) const {
        return of.data() + static_cast<std::ptrdiff_t>(node) * stride;
    }
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/base_inverse_inl.hpp"
#endif
