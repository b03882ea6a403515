// Many circuits, each wired as it likes, side by side in lanes: no common plan, no common base.
//
// Method. Star-mesh elimination (star_mesh.hpp, sources summed at the nodes) on dense triangles of conductances, a lane
// a circuit, 0 where a circuit has no branch. Eight circuits share one order, made on the spot: minimum degree over
// what any of them connects, kept as bits. For circuits that are much alike that costs little more than each one's own.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/solution.hpp"

#include <cstddef>

namespace bankwright::solver {

// `volts` [V]: a row of `width` for each circuit, its nodes first, as in Solution::volts; NaN unless solved. `width` is
// the most nodes that any of them has, or more. A circuit with joins, with loads that depend on their voltage, of more
// than 64 nodes or in several islands goes to solve(). Returns how many did not. Throws std::invalid_argument if a
// circuit has more nodes.
std::size_t solve_mixed(Circuit const* circuits, std::size_t count, int width, double* volts, Status* statuses,
                        InstructionSet set = widest_here());

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/mixed_inl.hpp"
#endif
