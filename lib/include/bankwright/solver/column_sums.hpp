// Sums of columns of numbers, factor by factor: what a network makes of its sources, what a step makes of its slopes.
//
// A column lies as rows of lanes do (lanes.hpp): aligned, and padded to `stride` numbers, a whole number of rows.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/in_time/power_port.hpp"
#include "bankwright/solver/lanes.hpp"

#include <cstddef>

namespace bankwright::solver {

// sums = the first column + factor by factor the `count` next ones; `sums` holds `stride` numbers, aligned, too.
void sum_columns(double const* columns, std::size_t stride, double const* factors, std::size_t count, double* sums,
                 InstructionSet set);

// answer = sums + factor by factor the columns, of the first `values`.
void add_columns(double const* columns, std::size_t stride, double const* factors, std::size_t count,
                 double const* sums, double* answer, std::size_t values, InstructionSet set);

// What both give together where the last column is that of one port of constant power, and row `values` its open
// voltage. `open_volts`: that row, [1] by source, laid out as a row of lanes. Returns [A] of the port. NaN: it cannot
// be fed, and `answer` is worth nothing.
double columns_behind_power(double const* columns, std::size_t stride, double const* factors, std::size_t count,
                            std::size_t values, PowerPort& port, double const* open_volts, double* answer,
                            InstructionSet set);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/column_sums_inl.hpp"
#endif
