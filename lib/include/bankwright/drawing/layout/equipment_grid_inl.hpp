#pragma once

#include "bankwright/drawing/layout/equipment_grid.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace bankwright::drawing {

namespace internal {

class GridMaker {
public:
    explicit GridMaker(Scheme const& scheme)
        : scheme_(scheme), column_(scheme.equipment.size(), -1), row_(scheme.equipment.size(), -1) {}

    EquipmentGrid make(int most_columns) {
        reach_outwards();
        pull_toward_loads();
        columns_of_sinks();
        rows();
        EquipmentGrid grid;
        std::map<std::pair<int, int>, int> row_of; // by band, then by row in it
        for (std::size_t e = 0; e < column_.size(); ++e)
            row_of[{column_[e] / most_columns, row_[e]}] = 0;
        for (auto& [place, row] : row_of)
            row = grid.rows++;
        for (std::size_t e = 0; e < column_.size(); ++e) {
            int const column = column_[e] % most_columns;
            grid.cells.push_back(
                {row_of[{column_[e] / most_columns, row_[e]}], column, column_[e], is_turned(static_cast<int>(e))});
            grid.columns = std::max(grid.columns, column + 1);
        }
        return grid;
    }

private:
    static constexpr int bank = -1; // the column of every battery
    static constexpr int nowhere = 1 << 20;

    Equipment const& part(int e) const { return scheme_.equipment[static_cast<std::size_t>(e)]; }
    int& column(int e) { return column_[static_cast<std::size_t>(e)]; }
    int column_of(End const& end) { return end.on_battery ? bank : column(end.part); }

    // Calls visit(terminal, other end, wire) for every conductor at this part, but those that come back to it.
    template <class Visit>
    void at(int e, Visit visit) const {
        for (auto const& wire : scheme_.wires)
            for (int i = 0; i < 2; ++i) {
                auto const& here = wire.end(i);
                auto const& there = wire.end(1 - i);
                if (here.on_battery || here.part != e) continue;
                if (!there.on_battery && there.part == e) continue;
                visit(here.terminal, there, wire);
            }
    }

    // The column that this part would have, as far as its neighbors have one: one further out than the nearest of
    // them. A connector waits for both of its poles and stands further out than the later one.
    int next_column(int e, bool patient) {
        int pole[2] = {nowhere, nowhere};
        bool wired[2] = {false, false};
        at(e, [&](int terminal, End const& there, Wire const&) {
            auto const p = part(e).has_poles() ? terminal % 2 : 0;
            if (!there.on_battery && part(there.part).is_sink()) return;
            wired[p] = true;
            if (there.on_battery || column(there.part) >= 0) pole[p] = std::min(pole[p], column_of(there) + 1);
        });
        if (patient && ((wired[0] && pole[0] == nowhere) || (wired[1] && pole[1] == nowhere))) return nowhere;
        if (pole[0] == nowhere || pole[1] == nowhere) return std::min(pole[0], pole[1]);
        return std::max(pole[0], pole[1]);
    }

    void reach_outwards() {
        auto const count = static_cast<int>(scheme_.equipment.size());
        bool patient = true;
        for (;;) {
            std::pair<int, int> best{nowhere, -1}; // column, part
            for (int e = 0; e < count; ++e)
                if (column(e) < 0 && !part(e).is_sink()) best = std::min(best, {next_column(e, patient), e});
            if (best.first < nowhere) {
                column(best.second) = best.first;
                patient = true;
            } else if (patient) {
                patient = false; // a pole that leads nowhere
            } else if (auto const island = first_without_column(); island >= 0) {
                column(island) = 0;
                patient = true;
            } else {
                return;
            }
        }
    }
    int first_without_column() {
        for (std::size_t e = 0; e < column_.size(); ++e)
            if (column_[e] < 0 && !scheme_.equipment[e].is_sink()) return static_cast<int>(e);
        return -1;
    }

    // A busbar or device with more conductors outwards than inwards stands by what it gathers.
    void pull_toward_loads() {
        columns_of_sinks();
        std::vector<int> order(column_.size());
        for (std::size_t i = 0; i < order.size(); ++i)
            order[i] = static_cast<int>(i);
        std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return column(a) > column(b); });
        for (auto const e : order) {
            if (part(e).is_sink() || part(e).has_poles()) continue;
            int inwards = 0, outwards = 0, nearest = nowhere;
            at(e, [&](int, End const& there, Wire const&) {
                auto const c = column_of(there);
                inwards += c < column(e);
                outwards += c > column(e);
                if (c > column(e)) nearest = std::min(nearest, c);
            });
            if (outwards > inwards && nearest < nowhere) column(e) = nearest - 1;
        }
    }

    void columns_of_sinks() {
        for (std::size_t i = 0; i < column_.size(); ++i) {
            if (!scheme_.equipment[i].is_sink()) continue;
            int farthest = bank;
            at(static_cast<int>(i), [&](int, End const& there, Wire const&) {
                if (!there.on_battery && !part(there.part).is_sink()) farthest = std::max(farthest, column(there.part));
            });
            column_[i] = farthest + 1;
        }
    }

    // --- rows -------------------------------------------------------------------------------------------------------
    struct Branch {
        bool negative = false;
        int part = 0;
    };

    void rows() {
        std::vector<Branch> roots;
        for (int e = 0; e < static_cast<int>(column_.size()); ++e) {
            bool joined = false, negative = true;
            at(e, [&](int, End const& there, Wire const& wire) {
                if (!there.on_battery) return;
                joined = true;
                negative = negative && wire.side == WireSide::negative;
            });
            if (joined) roots.push_back({negative, e});
        }
        std::stable_sort(roots.begin(), roots.end(),
                         [](auto const& a, auto const& b) { return a.negative < b.negative; });
        for (auto const& root : roots)
            place(root.part, 0);
        for (int e = 0; e < static_cast<int>(column_.size()); ++e)
            place(e, lowest_free_);
    }

    // Depth first; whatever follows stays in the same row where that is free.
    void place(int first, int wanted_row) {
        std::vector<std::pair<int, int>> pending{{first, wanted_row}}; // part, row
        while (!pending.empty()) {
            auto const e = pending.back().first, wanted = pending.back().second;
            pending.pop_back();
            auto& row = row_[static_cast<std::size_t>(e)];
            if (row >= 0) continue;
            row = wanted;
            while (taken_.count({column(e), row}) > 0)
                ++row;
            taken_.insert({column(e), row});
            lowest_free_ = std::max(lowest_free_, row + 1);
            std::vector<Branch> next;
            at(e, [&](int, End const& there, Wire const& wire) {
                if (!there.on_battery && column(there.part) > column(e) &&
                    row_[static_cast<std::size_t>(there.part)] < 0)
                    next.push_back({wire.side == WireSide::negative, there.part});
            });
            std::stable_sort(next.begin(), next.end(), [](auto const& a, auto const& b) {
                return std::pair(a.negative, a.part) < std::pair(b.negative, b.part);
            });
            for (auto branch = next.rbegin(); branch != next.rend(); ++branch)
                pending.push_back({branch->part, row});
        }
    }

    // The side of which something nearer the bank is joined lies on the left.
    bool is_turned(int e) {
        auto const kind = part(e).kind;
        if (part(e).is_sink() || kind == PartKind::busbar) return false;
        int nearest[2] = {nowhere, nowhere};
        at(e, [&](int terminal, End const& there, Wire const&) {
            auto& side = nearest[part(e).side_of(terminal)];
            side = std::min(side, column_of(there));
        });
        return nearest[1] < nearest[0] && nearest[1] < column(e);
    }

    Scheme const& scheme_;
    std::vector<int> column_;
    std::vector<int> row_;
    std::set<std::pair<int, int>> taken_; // column, row
    int lowest_free_ = 0;
};

} // namespace internal

BANKWRIGHT_INLINE bool EquipmentGrid::is_left(Scheme const& scheme, Wire const& wire, int end) const {
    auto const& here = wire.end(end);
    auto const& there = wire.end(1 - end);
    auto const& part = scheme.equipment[static_cast<std::size_t>(here.part)];
    auto const& cell = cells[static_cast<std::size_t>(here.part)];
    if (part.is_sink()) return true;
    if (part.kind == PartKind::busbar)
        return there.on_battery || cells[static_cast<std::size_t>(there.part)].depth <= cell.depth;
    return (part.side_of(here.terminal) == 0) != cell.turned;
}

BANKWRIGHT_INLINE EquipmentGrid equipment_grid(Scheme const& scheme, int most_columns) {
    return internal::GridMaker(scheme).make(most_columns);
}

} // namespace bankwright::drawing
