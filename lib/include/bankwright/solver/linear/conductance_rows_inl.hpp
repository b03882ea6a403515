// Bodies of conductance_rows.hpp.
#pragma once

#include "bankwright/solver/linear/conductance_rows.hpp"

#include <utility>

namespace bankwright::solver {

BANKWRIGHT_INLINE ConductanceRows conductance_rows(int rows, std::vector<int> const& row,
                                                   std::vector<Line> const& lines, std::vector<double> const& siemens) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    ConductanceRows made;
    made.ground.assign(at(rows), 0.0);
    std::vector<int> earlier(at(rows), 0);
    made.later.assign(at(rows), 0); // a count, before it is a place
    auto const each_pair = [&](auto use) {
        for (std::size_t line = 0; line < lines.size(); ++line) {
            if (!(siemens[line] > 0.0)) continue;
            int const a = row[at(lines[line].from)], b = row[at(lines[line].to)];
            if (a == b) continue; // both are roots, or the line is a loop
            if (a < 0 || b < 0)
                made.ground[at(a < 0 ? b : a)] += siemens[line];
            else
                use(a < b ? a : b, a < b ? b : a, siemens[line]);
        }
    };
    each_pair([&](int low, int high, double) { ++made.later[at(low)], ++earlier[at(high)]; });
    made.first.assign(1, 0);
    made.first.reserve(at(rows) + 1);
    for (int r = 0; r < rows; ++r) {
        int const begin = made.first.back();
        made.first.push_back(begin + earlier[at(r)] + made.later[at(r)]);
        made.later[at(r)] = begin + earlier[at(r)];
        earlier[at(r)] = begin;
    }
    made.neighbour.resize(at(made.first.back()));
    made.siemens.resize(made.neighbour.size());
    std::vector<int> next = made.later;
    made.ground.assign(at(rows), 0.0); // summed again by the second pass
    each_pair([&](int low, int high, double g) {
        auto const up = at(next[at(low)]++), down = at(earlier[at(high)]++);
        made.neighbour[up] = high, made.siemens[up] = g;
        made.neighbour[down] = low, made.siemens[down] = g;
    });
    return made;
}

BANKWRIGHT_INLINE ConductanceRows merged_rows(ConductanceRows const& rows, std::vector<int> const& group, int groups) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    // Members of each group, side by side.
    std::vector<int> begin(at(groups) + 1, 0), member(rows.ground.size());
    for (int g : group)
        if (g >= 0) ++begin[at(g) + 1];
    for (int g = 0; g < groups; ++g)
        begin[at(g) + 1] += begin[at(g)];
    std::vector<int> next(begin.begin(), begin.end() - 1);
    for (int r = 0; r < rows.size(); ++r)
        if (group[at(r)] >= 0) member[at(next[at(group[at(r)])]++)] = r;

    ConductanceRows made;
    made.first.reserve(at(groups) + 1);
    made.later.reserve(at(groups));
    made.ground.assign(at(groups), 0.0);
    made.neighbour.reserve(rows.neighbour.size() / 2);
    made.siemens.reserve(rows.neighbour.size() / 2);
    std::vector<int> place(at(groups), -1); // of a neighbour in the row that is being made
    std::vector<std::pair<int, double>> low, high;
    for (int g = 0; g < groups; ++g) {
        made.first.push_back(static_cast<int>(made.neighbour.size()));
        low.clear(), high.clear();
        for (int m = begin[at(g)]; m < begin[at(g) + 1]; ++m) {
            auto const r = at(member[at(m)]);
            made.ground[at(g)] += rows.ground[r];
            for (int e = rows.first[r]; e < rows.first[r + 1]; ++e) {
                int const other = group[at(rows.neighbour[at(e)])];
                double const siemens = rows.siemens[at(e)];
                if (other == g) continue;
                if (other < 0) {
                    made.ground[at(g)] += siemens;
                    continue;
                }
                auto& side = other < g ? low : high;
                int& where = place[at(other)];
                if (where < 0) {
                    where = static_cast<int>(side.size());
                    side.emplace_back(other, siemens);
                } else {
                    side[at(where)].second += siemens;
                }
            }
        }
        for (auto const* side : {&low, &high}) {
            if (side == &high) made.later.push_back(static_cast<int>(made.neighbour.size()));
            for (auto const& [other, siemens] : *side) {
                made.neighbour.push_back(other), made.siemens.push_back(siemens);
                place[at(other)] = -1;
            }
        }
    }
    made.first.push_back(static_cast<int>(made.neighbour.size()));
    return made;
}

BANKWRIGHT_INLINE void leaving_amps(ConductanceRows const& rows, std::vector<double> const& volts,
                                    std::vector<double>& amps) {
    int const* first = rows.first.data();
    for (std::size_t r = 0; r < volts.size(); ++r) {
        double const own = volts[r];
        double sum = rows.ground[r] * own;
        for (auto e = static_cast<std::size_t>(first[r]); e < static_cast<std::size_t>(first[r + 1]); ++e)
            sum += rows.siemens[e] * (own - volts[static_cast<std::size_t>(rows.neighbour[e])]);
        amps[r] = sum;
    }
}

} // namespace bankwright::solver
