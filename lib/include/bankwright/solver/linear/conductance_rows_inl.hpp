// Bodies of conductance_rows.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/conductance_rows.hpp"

#include <utility>

namespace bankwright::solver {

BANKWRIGHT_INLINE ConductanceRows conductance_rows(int rows, std::vector<int> const& row,
                                                   std::vector<Line> const& lines, std::vector<double> const& siemens) {
    ConductanceRows made;
    made.ground.assign(as_index(rows), 0.0);
    std::vector<int> earlier(as_index(rows), 0);
    made.later.assign(as_index(rows), 0); // a count, before it is a place
    auto const each_pair = [&](auto use) {
        for (std::size_t line = 0; line < lines.size(); ++line) {
            if (!(siemens[line] > 0.0)) continue;
            int const a = row[as_index(lines[line].from)], b = row[as_index(lines[line].to)];
            if (a == b) continue; // both are roots, or the line is a loop
            if (a < 0 || b < 0)
                made.ground[as_index(a < 0 ? b : a)] += siemens[line];
            else
                use(a < b ? a : b, a < b ? b : a, siemens[line]);
        }
    };
    each_pair([&](int low, int high, double) { ++made.later[as_index(low)], ++earlier[as_index(high)]; });
    made.first.assign(1, 0);
    made.first.reserve(as_index(rows) + 1);
    for (int r = 0; r < rows; ++r) {
        int const begin = made.first.back();
        made.first.push_back(begin + earlier[as_index(r)] + made.later[as_index(r)]);
        made.later[as_index(r)] = begin + earlier[as_index(r)];
        earlier[as_index(r)] = begin;
    }
    made.neighbor.resize(as_index(made.first.back()));
    made.siemens.resize(made.neighbor.size());
    std::vector<int> next = made.later;
    made.ground.assign(as_index(rows), 0.0); // summed again by the second pass
    each_pair([&](int low, int high, double g) {
        auto const up = as_index(next[as_index(low)]++), down = as_index(earlier[as_index(high)]++);
        made.neighbor[up] = high, made.siemens[up] = g;
        made.neighbor[down] = low, made.siemens[down] = g;
    });
    return made;
}

BANKWRIGHT_INLINE ConductanceRows merged_rows(ConductanceRows const& rows, std::vector<int> const& group, int groups) {
    // Members of each group, side by side.
    std::vector<int> begin(as_index(groups) + 1, 0), member(rows.ground.size());
    for (int g : group)
        if (g >= 0) ++begin[as_index(g) + 1];
    for (int g = 0; g < groups; ++g)
        begin[as_index(g) + 1] += begin[as_index(g)];
    std::vector<int> next(begin.begin(), begin.end() - 1);
    for (int r = 0; r < rows.size(); ++r)
        if (group[as_index(r)] >= 0) member[as_index(next[as_index(group[as_index(r)])]++)] = r;

    ConductanceRows made;
    made.first.reserve(as_index(groups) + 1);
    made.later.reserve(as_index(groups));
    made.ground.assign(as_index(groups), 0.0);
    made.neighbor.reserve(rows.neighbor.size() / 2);
    made.siemens.reserve(rows.neighbor.size() / 2);
    std::vector<int> place(as_index(groups), -1); // of a neighbor in the row that is being made
    std::vector<std::pair<int, double>> low, high;
    for (int g = 0; g < groups; ++g) {
        made.first.push_back(static_cast<int>(made.neighbor.size()));
        low.clear(), high.clear();
        for (int m = begin[as_index(g)]; m < begin[as_index(g) + 1]; ++m) {
            auto const r = as_index(member[as_index(m)]);
            made.ground[as_index(g)] += rows.ground[r];
            for (int e = rows.first[r]; e < rows.first[r + 1]; ++e) {
                int const other = group[as_index(rows.neighbor[as_index(e)])];
                double const siemens = rows.siemens[as_index(e)];
                if (other == g) continue;
                if (other < 0) {
                    made.ground[as_index(g)] += siemens;
                    continue;
                }
                auto& side = other < g ? low : high;
                int& where = place[as_index(other)];
                if (where < 0) {
                    where = static_cast<int>(side.size());
                    side.emplace_back(other, siemens);
                } else {
                    side[as_index(where)].second += siemens;
                }
            }
        }
        for (auto const* side : {&low, &high}) {
            if (side == &high) made.later.push_back(static_cast<int>(made.neighbor.size()));
            for (auto const& [other, siemens] : *side) {
                made.neighbor.push_back(other), made.siemens.push_back(siemens);
                place[as_index(other)] = -1;
            }
        }
    }
    made.first.push_back(static_cast<int>(made.neighbor.size()));
    return made;
}

BANKWRIGHT_INLINE void leaving_amps(ConductanceRows const& rows, std::vector<double> const& volts,
                                    std::vector<double>& amps) {
    int const* first = rows.first.data();
    for (std::size_t r = 0; r < volts.size(); ++r) {
        double const own = volts[r];
        double sum = rows.ground[r] * own;
        for (auto e = as_index(first[r]); e < as_index(first[r + 1]); ++e)
            sum += rows.siemens[e] * (own - volts[as_index(rows.neighbor[e])]);
        amps[r] = sum;
    }
}

} // namespace bankwright::solver
