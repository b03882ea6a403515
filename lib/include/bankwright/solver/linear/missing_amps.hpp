// What do voltages that are nearly right leave unbalanced at the nodes? Worked out branch by branch, g (Va - Vb) + i in
// long double: the difference of two volts that are almost alike is exact, where a product with the matrix would lose
// it.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/topology.hpp"

#include <cstddef>
#include <vector>

namespace bankwright::solver {

// [A] by node: what must still flow into it. `siemens` [S] and `line_amps` [A] (of the sources) by line, `volts` [V] by
// node.
inline std::vector<double> missing_amps(std::vector<Line> const& lines, std::vector<double> const& siemens,
                                        std::vector<double> const& line_amps, std::vector<double> const& volts) {
    std::vector<long double> sum(volts.size(), 0.0L);
    for (std::size_t line = 0; line < lines.size(); ++line) {
        auto const from = as_index(lines[line].from), to = as_index(lines[line].to);
        long double const drop = static_cast<long double>(volts[from]) - static_cast<long double>(volts[to]);
        long double const carried = static_cast<long double>(siemens[line]) * drop + line_amps[line];
        sum[from] -= carried;
        sum[to] += carried;
    }
    return std::vector<double>(sum.begin(), sum.end());
}

} // namespace bankwright::solver
