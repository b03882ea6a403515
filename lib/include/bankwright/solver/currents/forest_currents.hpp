// What must flow where a line is the only way? Kirchhoff's current law alone, from the loose ends inward.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/topology.hpp"

#include <cstddef>
#include <vector>

namespace bankwright::solver {

// From the loose ends inward: one line after the other, with what has gathered at its `end` going on to its `other`
// end.
struct ForestStep {
    std::size_t line;
    int end, other;
    bool outward; // the line leads from `end` to `other`
};
std::vector<ForestStep> forest_order(int nodes, std::vector<Line> const& lines);

struct ForestCurrents {
    std::vector<double> amps;  // [A] by line, from its `from` to its `to`; 0 where not settled
    std::vector<char> settled; // by line; a line on a ring, or between rings, is not
};

// `leaving` [A] by node: what else carries away from it. On return it holds what the settled lines leave to the rest.
// A line that starts and ends at one node carries nothing and counts as settled.
ForestCurrents forest_currents(int nodes, std::vector<Line> const& lines, std::vector<double>& leaving);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/currents/forest_currents_inl.hpp"
#endif
