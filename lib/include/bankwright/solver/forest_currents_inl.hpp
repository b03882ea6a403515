// Bodies of forest_currents.hpp.
#pragma once

#include "bankwright/solver/forest_currents.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE ForestCurrents forest_currents(int nodes, std::vector<Line> const& lines,
                                                 std::vector<double>& leaving) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    ForestCurrents found{std::vector<double>(lines.size(), 0.0), std::vector<char>(lines.size(), 0)};

    // By node, the count of its open lines and the exclusive-or of their numbers: with one left, that is the line.
    struct Left {
        int open = 0;
        std::size_t which = 0;
    };
    std::vector<Left> left(at(nodes));
    for (std::size_t l = 0; l < lines.size(); ++l) {
        if (lines[l].from == lines[l].to) {
            found.settled[l] = 1;
            continue;
        }
        for (int end : {lines[l].from, lines[l].to}) {
            ++left[at(end)].open;
            left[at(end)].which ^= l;
        }
    }
    std::vector<int> ends;
    ends.reserve(at(nodes));
    for (int n = 0; n < nodes; ++n)
        if (left[at(n)].open == 1) ends.push_back(n);
    while (!ends.empty()) {
        int const end = ends.back();
        ends.pop_back();
        if (left[at(end)].open != 1) continue; // its line was settled from the other side
        std::size_t const l = left[at(end)].which;
        int const other = lines[l].from == end ? lines[l].to : lines[l].from;
        found.amps[l] = lines[l].from == end ? -leaving[at(end)] : leaving[at(end)];
        found.settled[l] = 1;
        leaving[at(other)] += leaving[at(end)];
        leaving[at(end)] = 0.0;
        left[at(end)].open = 0;
        left[at(other)].which ^= l;
        if (--left[at(other)].open == 1) ends.push_back(other);
    }
    return found;
}

} // namespace bankwright::solver
