// Star-mesh elimination of a whole block of banks at once, by the chosen instructions.
//
// Method. star_mesh.hpp, with sources summed at the nodes: the pivot's injection b goes to its neighbors in shares
// l = c / s. Letters. c [S] conductance, s [S] sum at the pivot, l share, b [A] injection, V [V].
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/lanes/lane_program.hpp"

namespace bankwright::solver {

// The first `used` lanes at least are computed.
//
// From parameters to conductances, injections, and on through the pivots of `forward`.
void run_forward(LaneProgram const& program, double* rows, int used, InstructionSet set);

// From the injections that remain, divided by their pivots, to volts.
void run_backward(LaneProgram const& program, double* rows, int used, InstructionSet set);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/lanes/lane_kernels_inl.hpp"
#endif
