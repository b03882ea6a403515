// What does a current from one node to another do to every voltage? All of it at once, for a circuit that is asked
// often: the inverse of its conductance matrix, Z, and what follows from it.
//
// Each number of Z is a sum of positive terms (star_mesh.hpp, with one ampere into each node in turn), and it is found
// in long double: exact to rounding where that is wider than double. So are the resistances between pairs of nodes,
// Z(a,a) + Z(b,b) - 2 Z(a,b), before they are rounded.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/topology.hpp"

#include <cstddef>
#include <memory>

namespace bankwright::solver {

struct BaseInverse {
    // Loads count only if their current is constant. Keeps no reference.
    BaseInverse(Circuit const& circuit, Topology const& topology);

    // The same network without its sources, 1 A in at `red` and out at `black`, both on one island.
    BaseInverse answering(int red, int black) const;

    using Rows = std::shared_ptr<LaneRows const>; // of the network alone, whatever its sources
    int nodes;
    int stride;                // doubles from one row to the next; what lies beyond `nodes` is zero
    LaneRows volts;            // [V] by node
    Rows own;                  // [ohm] by node: Z on the diagonal
    Rows ohms;                 // Z [ohm] row by row, by node and node: 0 between islands
    Rows across;               // [ohm] row by row: the resistance between two nodes of one island
    double largest = 0.0;      // [V] of all voltages, emfs and what they are made of: errors are measured against it
    double wide_epsilon = 0.0; // relative error of Z before it was rounded

    double const* row(Rows const& of, int node) const {
        return of->data() + static_cast<std::ptrdiff_t>(node) * stride;
    }

private:
    explicit BaseInverse(int count)
        : nodes(count), stride(static_cast<int>(padded(as_index(count)))), volts(rows_for(as_index(count))) {}
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/variants/base_inverse_inl.hpp"
#endif
