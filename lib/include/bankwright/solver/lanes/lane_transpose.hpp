// Between one bank after another, as NumPy lays them out, and one value after another, as the lanes need them.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/lanes.hpp"

namespace bankwright::solver {

// `banks`: where each lane's `count` values begin; `rows`: count x lanes. Is every value finite, and the first
// `positive` of each bank within 1e-75 to 1e75?
bool banks_to_rows(double const* const* banks, int count, int positive, double* rows, InstructionSet set);

// `rows[i]`: the lanes of value i; `banks`: where the `count` values of each lane go.
void rows_to_banks(double const* const* rows, int count, double* const* banks, InstructionSet set);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/lanes/lane_transpose_inl.hpp"
#endif
