// Bodies of multigrid.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/multigrid.hpp"

#include <algorithm>
#include <utility>

namespace bankwright::solver {
namespace internal::grouping {

// Pairs each row with the free neighbor to which it is tied most strongly. A row without one stays alone or joins a
// pair. A row that the roots hold more strongly than all its neighbors together needs no coarser level: -1.
inline std::vector<int> pairs(ConductanceRows const& rows, int& groups) {
    constexpr double strong = 0.25; // of the row's strongest tie
    std::vector<int> group(rows.ground.size(), -2), members;
    for (int r = 0; r < rows.size(); ++r) {
        if (group[as_index(r)] != -2) continue;
        double sum = 0.0, strongest = 0.0, most = 0.0;
        int best = -1, strongest_row = -1;
        for (int e = rows.first[as_index(r)]; e < rows.first[as_index(r) + 1]; ++e) {
            double const g = rows.siemens[as_index(e)];
            int const other = rows.neighbor[as_index(e)];
            sum += g;
            if (g > strongest) strongest = g, strongest_row = other;
            if (group[as_index(other)] == -2 && g > most) most = g, best = other;
        }
        if (rows.ground[as_index(r)] > 4.0 * sum) {
            group[as_index(r)] = -1;
            continue;
        }
        int const joined = strongest_row < 0 ? -1 : group[as_index(strongest_row)];
        if (best >= 0 && most >= strong * strongest) {
            group[as_index(r)] = group[as_index(best)] = static_cast<int>(members.size());
            members.push_back(2);
        } else if (joined >= 0 && members[as_index(joined)] < 3) {
            group[as_index(r)] = joined;
            ++members[as_index(joined)];
        } else {
            group[as_index(r)] = static_cast<int>(members.size());
            members.push_back(1);
        }
    }
    groups = static_cast<int>(members.size());
    return group;
}

inline double dot(std::vector<double> const& a, std::vector<double> const& b) {
    double sum[4] = {}; // four chains: an addition need not wait for the one before
    std::size_t i = 0;
    for (; i + 4 <= a.size(); i += 4)
        for (std::size_t k = 0; k < 4; ++k)
            sum[k] += a[i + k] * b[i + k];
    for (; i < a.size(); ++i)
        sum[0] += a[i] * b[i];
    return (sum[0] + sum[1]) + (sum[2] + sum[3]);
}

} // namespace internal::grouping

BANKWRIGHT_INLINE Multigrid::Multigrid(ConductanceRows finest, Groups groups, int few) {
    levels_.push_back({std::move(finest), {}, {}});
    for (;;) {
        Level& level = levels_.back();
        level.ohms.resize(level.rows.ground.size());
        for (std::size_t r = 0; r < level.ohms.size(); ++r) {
            double sum = level.rows.ground[r];
            for (auto e = as_index(level.rows.first[r]); e < as_index(level.rows.first[r + 1]); ++e)
                sum += level.rows.siemens[e];
            level.ohms[r] = 1.0 / sum;
        }
        if (level.rows.size() <= few) break;
        int count = 0;
        level.group = internal::grouping::pairs(level.rows, count);
        ConductanceRows coarser = merged_rows(level.rows, level.group, count);
        if (groups == Groups::pairs_of_pairs) {
            auto const again = internal::grouping::pairs(coarser, count);
            for (int& g : level.group)
                if (g >= 0) g = again[as_index(g)];
            coarser = merged_rows(coarser, again, count);
        }
        if (coarser.size() == 0 || 5 * coarser.size() > 4 * level.rows.size()) {
            level.group.clear(); // no coarser level is worth it
            break;
        }
        levels_.push_back({std::move(coarser), {}, {}});
    }
    auto const& last = levels_.back().rows;
    std::vector<Line> lines;
    std::vector<double> siemens;
    for (int r = 0; r < last.size(); ++r) {
        for (int e = last.later[as_index(r)]; e < last.first[as_index(r) + 1]; ++e) {
            lines.push_back({r, last.neighbor[as_index(e)]});
            siemens.push_back(last.siemens[as_index(e)]);
        }
        lines.push_back({r, last.size()});
        siemens.push_back(last.ground[as_index(r)]);
    }
    coarsest_ = std::make_unique<SparseNetwork>(last.size() + 1, std::move(lines), std::move(siemens),
                                                std::vector<int>{last.size()});
}

BANKWRIGHT_INLINE std::vector<Multigrid::Workspace> Multigrid::workspace() const {
    std::vector<Workspace> workspace(levels_.size());
    for (std::size_t l = 1; l < levels_.size(); ++l)
        for (auto* each : {&workspace[l].right, &workspace[l].left, &workspace[l].slope, &workspace[l].second,
                           &workspace[l].second_slope})
            each->resize(levels_[l].ohms.size());
    return workspace;
}

BANKWRIGHT_INLINE void Multigrid::solve_roughly(std::vector<double> const& amps, std::vector<double>& volts,
                                                std::vector<Workspace>& workspace) const {
    cycle(0, amps, volts, workspace);
}

// One sweep, the coarser level's correction, one sweep back.
BANKWRIGHT_INLINE void Multigrid::cycle(std::size_t l, std::vector<double> const& amps, std::vector<double>& volts,
                                        std::vector<Workspace>& workspace) const {
    auto const& [rows, ohms, group] = levels_[l];
    std::size_t const count = ohms.size();
    if (l + 1 == levels_.size()) {
        std::vector<double> injected(amps);
        injected.push_back(0.0);
        auto const found = coarsest_->volts_of_injections(injected);
        std::copy_n(found.begin(), count, volts.begin());
        return;
    }
    auto& coarse = workspace[l + 1];
    std::fill(coarse.right.begin(), coarse.right.end(), 0.0);
    for (std::size_t r = 0; r < count; ++r) { // from 0 V: only earlier rows have a voltage yet
        auto const begin = as_index(rows.first[r]), end = as_index(rows.later[r]);
        double sum = amps[r];
        for (auto e = begin; e < end; ++e)
            sum += rows.siemens[e] * volts[as_index(rows.neighbor[e])];
        volts[r] = sum * ohms[r];
        for (auto e = begin; e < end; ++e) // what this leaves over lies in the earlier rows alone
            if (int const g = group[as_index(rows.neighbor[e])]; g >= 0)
                coarse.right[as_index(g)] += rows.siemens[e] * volts[r];
    }
    correct(l + 1, workspace);
    for (std::size_t r = 0; r < count; ++r)
        if (group[r] >= 0) volts[r] += coarse.left[as_index(group[r])];
    for (std::size_t r = count; r-- > 0;) {
        double sum = amps[r];
        for (auto e = as_index(rows.first[r]); e < as_index(rows.first[r + 1]); ++e)
            sum += rows.siemens[e] * volts[as_index(rows.neighbor[e])];
        volts[r] = sum * ohms[r];
    }
}

// `left` of this level from its `right`: up to two steps of conjugate gradients, each with a cycle for its direction.
BANKWRIGHT_INLINE void Multigrid::correct(std::size_t l, std::vector<Workspace>& workspace) const {
    using internal::grouping::dot;
    Workspace& my = workspace[l];
    cycle(l, my.right, my.left, workspace);
    if (l + 1 == levels_.size()) return; // that was exact
    leaving_amps(levels_[l].rows, my.left, my.slope);
    double const energy = dot(my.left, my.slope), along = dot(my.left, my.right);
    if (!(energy > 0.0)) return;
    double const before = dot(my.right, my.right), step = along / energy;
    for (std::size_t r = 0; r < my.right.size(); ++r)
        my.right[r] -= step * my.slope[r];
    double first = step, second = 0.0;
    constexpr double good_enough = 0.3;
    if (dot(my.right, my.right) > good_enough * good_enough * before) {
        cycle(l, my.right, my.second, workspace);
        leaving_amps(levels_[l].rows, my.second, my.second_slope);
        double const mixed = dot(my.second, my.slope), own = dot(my.second, my.second_slope);
        double const rest = own - mixed * mixed / energy, onward = dot(my.second, my.right);
        if (rest > 0.0) {
            second = onward / rest;
            first -= mixed * second / energy;
        }
    }
    for (std::size_t r = 0; r < my.right.size(); ++r)
        my.left[r] = first * my.left[r] + (second == 0.0 ? 0.0 : second * my.second[r]);
}

} // namespace bankwright::solver
