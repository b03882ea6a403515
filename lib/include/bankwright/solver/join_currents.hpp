// What flows in connections that have no resistance? Kirchhoff's current law settles it where they form no ring; round
// a ring the split is the one that equal small resistances would give.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"

#include <vector>

namespace bankwright::solver {

// `leaving` [A] by node: what branches and loads carry away from it. [A] by join, positive from `from` to `to`.
std::vector<double> join_currents(Circuit const& circuit, std::vector<double> leaving, int star_mesh_limit);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/join_currents_inl.hpp"
#endif
