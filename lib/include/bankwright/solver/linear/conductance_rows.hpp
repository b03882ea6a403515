// A network of conductances as a large solver wants it: by node its neighbors, and what ties it to the roots.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/topology.hpp"

#include <vector>

namespace bankwright::solver {

// Rows are numbered from 0 and hold no root. Nowhere is a diagonal stored: what flows away from a row is summed from
// the differences of voltages, and so keeps its accuracy where a rounded diagonal would bury it.
struct ConductanceRows {
    std::vector<int> first;      // by row and one more: where it begins
    std::vector<int> later;      // by row: where its neighbors of a higher number begin
    std::vector<int> neighbor;   // by entry
    std::vector<double> siemens; // [S] by entry, > 0
    std::vector<double> ground;  // [S] by row, to the roots
    int size() const { return static_cast<int>(ground.size()); }
};

// `row` by node of the lines, -1 for a root; `siemens` [S] by line.
ConductanceRows conductance_rows(int rows, std::vector<int> const& row, std::vector<Line> const& lines,
                                 std::vector<double> const& siemens);

// Every group of rows made one; `group` by row, -1 for a row that is left out, as if it were a root.
ConductanceRows merged_rows(ConductanceRows const& rows, std::vector<int> const& group, int groups);

// [A] by row: what leaves it at these voltages, with the roots at 0 V.
void leaving_amps(ConductanceRows const& rows, std::vector<double> const& volts, std::vector<double>& amps);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/linear/conductance_rows_inl.hpp"
#endif
