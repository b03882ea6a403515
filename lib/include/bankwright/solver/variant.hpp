// A circuit that differs from another in a few branches: what is changed, how well it is to be solved, what comes of
// it.
#pragma once

#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/solve.hpp"

namespace bankwright::solver {

struct Change {
    int branch = -1; // of the base; -1: one more
    Branch now{};    // what stands there instead; an infinite resistance: nothing
};

struct VariantOptions {
    double accuracy = 1e-10; // of any voltage, relative to the largest voltage or emf of the base
    SolveOptions solve{};    // above its star_mesh_limit everything is solved afresh
    InstructionSet set = widest_here();
};

struct VariantAnswer {
    Status status = Status::bad_circuit;
    bool updated = false; // false: solved afresh
    double error = 0.0;   // [V] bound for any node, if updated
};

} // namespace bankwright::solver
