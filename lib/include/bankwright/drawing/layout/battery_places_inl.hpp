#pragma once

#include "bankwright/drawing/layout/battery_places.hpp"
#include "bankwright/drawing/layout/measures.hpp"
#include "bankwright/drawing/wires/tracks.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace bankwright::drawing {

namespace internal {

class BatteryPlacer {
public:
    explicit BatteryPlacer(Plan& plan) : plan_(plan) {}

    BatteryPlaces place() {
        columns();
        rows();
        for (auto const& cell : plan_.batteries.cells)
            places_.boxes.push_back({places_.columns[static_cast<std::size_t>(cell.column)],
                                     places_.rows[static_cast<std::size_t>(cell.row)], measures::battery_width,
                                     measures::battery_height});
        return std::move(places_);
    }

private:
    using Lines = std::vector<std::pair<Leg*, int>>;

    // Where this leg begins and ends along its channel: vertical channel v at 2v, the posts of column c at 2c + 1 -+
    // 0.5.
    double key(Leg const& leg, bool at_start) const {
        bool const at_terminal = at_start ? plan_.is_first(leg) : plan_.is_last(leg);
        if (!at_terminal) {
            auto const& next = at_start ? plan_.before(leg) : plan_.after(leg);
            return 2.0 * plan_.channel(next).number;
        }
        auto const& end = plan_.wire(leg).end(at_start ? 0 : 1);
        auto const& cell = plan_.batteries.cells[static_cast<std::size_t>(end.part)];
        bool const on_the_right = (end.terminal == 0) != cell.turned;
        return 2.0 * cell.column + 1.0 + (on_the_right ? 0.5 : -0.5);
    }
    // Lugs lie side by side on a post, so two legs that meet on one post still meet.
    std::pair<double, double> stretch(Leg const& leg) const { return std::minmax(key(leg, true), key(leg, false)); }

    // Takes lines for these legs, short stretches first, and returns how many there are.
    int lines_for(std::vector<Leg*> legs, Lines& taken) const {
        std::stable_sort(legs.begin(), legs.end(), [&](Leg* a, Leg* b) {
            auto const [a0, a1] = stretch(*a);
            auto const [b0, b1] = stretch(*b);
            return a1 - a0 < b1 - b0;
        });
        Tracks tracks;
        for (auto* leg : legs) {
            auto const [from, to] = stretch(*leg);
            taken.emplace_back(leg, tracks.take(from, to));
        }
        return tracks.lines();
    }

    void columns() {
        double x = measures::margin;
        for (int c = 0; c < plan_.batteries.columns; ++c) {
            Lines taken;
            auto const lines = lines_for(plan_.legs_in({false, c}), taken);
            auto const gap = c == 0 ? 16.0 : measures::battery_gap;
            for (auto& [leg, line] : taken)
                leg->at = x + measures::label_pitch * (line + 0.5);
            x += std::max(gap, measures::label_pitch * lines + (lines > 0 ? 6.0 : 0.0));
            places_.columns.push_back(x);
            x += measures::battery_width;
        }
        places_.right = x;
    }

    // Room for two leads a string at their full distance, and in any row for more than a dozen that crowd; only beyond
    // that do loads move batteries.
    double reserve_above(int row, int lines) const {
        auto const leads = 2.0 * plan_.batteries.strings[static_cast<std::size_t>(row)];
        auto room = std::max(measures::reserve, measures::line_pitch * (leads + 1.0));
        while (room / (lines + 1) < measures::crowded_pitch)
            room *= 2.0;
        return room;
    }

    void rows() {
        double y = measures::header + 12.0; // so that a lead can run straight into the first row of equipment
        for (int r = 0; r < plan_.batteries.rows; ++r) {
            std::vector<Leg*> own, others;
            for (auto* leg : plan_.legs_in({true, r}))
                (leg->labeled ? own : others).push_back(leg);
            Lines taken, passing;
            auto const own_lines = lines_for(std::move(own), taken);
            auto const other_lines = lines_for(std::move(others), passing);
            auto const labels = own_lines > 0 ? measures::label_pitch * own_lines + 8.0 : 14.0;
            auto const reserve = reserve_above(r, other_lines);
            y += reserve + labels;
            for (auto& [leg, line] : taken)
                leg->at = y - 8.0 - measures::label_pitch * (line + 0.5);
            auto const pitch = std::min(measures::line_pitch, reserve / (other_lines + 1));
            for (auto& [leg, line] : passing)
                leg->at = y - labels - pitch * (line + 0.5);
            places_.rows.push_back(y);
            y += measures::battery_height;
        }
        places_.bottom = y;
    }

    Plan& plan_;
    BatteryPlaces places_;
};

} // namespace internal

BANKWRIGHT_INLINE Point BatteryPlaces::post(BatteryRows const& grid, End const& end) const {
    auto const& box = boxes[static_cast<std::size_t>(end.part)];
    bool const turned = grid.cells[static_cast<std::size_t>(end.part)].turned;
    bool const on_the_right = (end.terminal == 0) != turned;
    return {on_the_right ? box.right() - measures::post_inset : box.x + measures::post_inset,
            box.y + measures::post_depth};
}

BANKWRIGHT_INLINE BatteryPlaces place_batteries(Plan& plan) { return internal::BatteryPlacer(plan).place(); }

} // namespace bankwright::drawing
