// What do the nodes and branches of a circuit carry?
//
// Steps. 1. validate. 2. Merge joined nodes, find islands (topology.hpp). 3. Linear network by star-mesh elimination,
// sparse LDL^T when large, multigrid when very large (linear_network.hpp). 4. Loads that depend on voltage: reduce the
// network to their ports, V = V0 - Z I, and solve there (loads/port_loads.hpp). 5. Final voltages with all load
// currents in place; branch currents from them, join currents from Kirchhoff's current law. 6. Residual and power
// balance from the final numbers.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/topology.hpp"

namespace bankwright::solver {

struct SolveOptions {
    int star_mesh_limit = 500;  // merged nodes; larger circuits go to a sparse factorization
    int factor_limit = 100'000; // merged nodes; larger ones are iterated
    int max_iterations = 200;   // of Newton's method, each time it is used
};

// Never throws for what the circuit holds: the status says what came of it. Volts, amperes and the rest are filled only
// with Status::solved; Status::no_operating_point fills reachable_share. A load whose ends no branch or join connects
// carries nothing. Nor does a shorted load (a charger excepted: it delivers its limit into the short).
Solution solve(Circuit const& circuit, SolveOptions const& options = {});

// The same with the topology at hand. It must be that of this circuit, whose numbers may have changed since.
Solution solve(Circuit const& circuit, Topology const& topology, SolveOptions const& options = {});

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/solve_inl.hpp"
#endif
