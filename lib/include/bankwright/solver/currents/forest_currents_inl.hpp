// Bodies of forest_currents.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/currents/forest_currents.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE std::vector<ForestStep> forest_order(int nodes, std::vector<Line> const& lines) {
    // By node, the count of its open lines and the exclusive-or of their numbers: with one left, that is the line.
    struct Left {
        int open = 0;
        std::size_t which = 0;
    };
    std::vector<Left> left(as_index(nodes));
    for (std::size_t l = 0; l < lines.size(); ++l) {
        if (lines[l].from == lines[l].to) continue;
        for (int end : {lines[l].from, lines[l].to}) {
            ++left[as_index(end)].open;
            left[as_index(end)].which ^= l;
        }
    }
    std::vector<int> ends;
    ends.reserve(as_index(nodes));
    for (int n = 0; n < nodes; ++n)
        if (left[as_index(n)].open == 1) ends.push_back(n);
    std::vector<ForestStep> steps;
    steps.reserve(lines.size());
    while (!ends.empty()) {
        int const end = ends.back();
        ends.pop_back();
        if (left[as_index(end)].open != 1) continue; // its line was settled from the other side
        std::size_t const l = left[as_index(end)].which;
        bool const outward = lines[l].from == end;
        int const other = outward ? lines[l].to : lines[l].from;
        steps.push_back({l, end, other, outward});
        left[as_index(end)].open = 0;
        left[as_index(other)].which ^= l;
        if (--left[as_index(other)].open == 1) ends.push_back(other);
    }
    return steps;
}

BANKWRIGHT_INLINE ForestCurrents forest_currents(int nodes, std::vector<Line> const& lines,
                                                 std::vector<double>& leaving) {
    ForestCurrents found{std::vector<double>(lines.size(), 0.0), std::vector<char>(lines.size(), 0)};
    for (std::size_t l = 0; l < lines.size(); ++l)
        found.settled[l] = lines[l].from == lines[l].to;
    for (ForestStep const& step : forest_order(nodes, lines)) {
        auto& gathered = leaving[as_index(step.end)];
        found.amps[step.line] = step.outward ? -gathered : gathered;
        found.settled[step.line] = 1;
        leaving[as_index(step.other)] += gathered;
        gathered = 0.0;
    }
    return found;
}

} // namespace bankwright::solver
