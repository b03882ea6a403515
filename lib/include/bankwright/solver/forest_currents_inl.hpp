// Bodies of forest_currents.hpp.
#pragma once

#include "bankwright/solver/forest_currents.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE ForestCurrents forest_currents(int nodes, std::vector<Line> const& lines,
                                                 std::vector<double>& leaving) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    ForestCurrents found{std::vector<double>(lines.size(), 0.0), std::vector<char>(lines.size(), 0)};

    // By node, the count of its open lines and the exclusive-or of their numbers: with one left, that is the line.
    std::vector<int> open(at(nodes), 0);
    std::vector<std::size_t> which(at(nodes), 0);
    for (std::size_t l = 0; l < lines.size(); ++l) {
        if (lines[l].from == lines[l].to) {
            found.settled[l] = 1;
            continue;
        }
        for (int end : {lines[l].from, lines[l].to}) {
            ++open[at(end)];
            which[at(end)] ^= l;
        }
    }
    std::vector<int> ends;
    for (int n = 0; n < nodes; ++n)
        if (open[at(n)] == 1) ends.push_back(n);
    while (!ends.empty()) {
        int const end = ends.back();
        ends.pop_back();
        if (open[at(end)] != 1) continue; // its line was settled from the other side
        std::size_t const l = which[at(end)];
        int const other = lines[l].from == end ? lines[l].to : lines[l].from;
        found.amps[l] = lines[l].from == end ? -leaving[at(end)] : leaving[at(end)];
        found.settled[l] = 1;
        leaving[at(other)] += leaving[at(end)];
        leaving[at(end)] = 0.0;
        open[at(end)] = 0;
        which[at(other)] ^= l;
        if (--open[at(other)] == 1) ends.push_back(other);
    }
    return found;
}

} // namespace bankwright::solver
