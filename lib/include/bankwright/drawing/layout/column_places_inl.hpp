#pragma once

#include "bankwright/drawing/layout/column_places.hpp"
#include "bankwright/drawing/layout/measures.hpp"
#include "bankwright/drawing/wires/tracks.hpp"

#include <algorithm>
#include <utility>

namespace bankwright::drawing {

namespace internal {

class ColumnPlacer {
public:
    ColumnPlacer(Plan& plan, BatteryPlaces const& batteries, EquipmentPlaces const& equipment)
        : plan_(plan), batteries_(batteries), equipment_(equipment) {}

    ColumnPlaces place() {
        auto const spine = plan_.batteries.columns;
        double x = plan_.batteries.columns > 0 ? batteries_.right : measures::margin;
        for (int c = 0; c <= plan_.equipment.columns; ++c) {
            x = lines_in(spine + c, x);
            if (c == plan_.equipment.columns) break;
            x += room_for_labels(c);
            places_.left.push_back(x);
            double widest = 0.0;
            for (std::size_t e = 0; e < plan_.equipment.cells.size(); ++e)
                if (plan_.equipment.cells[e].column == c) widest = std::max(widest, equipment_.width[e]);
            x += widest;
        }
        places_.right = x;
        return std::move(places_);
    }

private:
    double y_at_start(Leg const& leg) const {
        return plan_.is_first(leg) ? equipment_.lug[leg.wire][0] : plan_.before(leg).at;
    }
    double y_at_end(Leg const& leg) const {
        return plan_.is_last(leg) ? equipment_.lug[leg.wire][1] : plan_.after(leg).at;
    }

    // In each channel the lines of conductors that go down stand in an order in which they do not cross each other.
    double lines_in(int number, double x) {
        auto legs = plan_.legs_in({false, number});
        std::erase_if(legs, [&](Leg* leg) { return is_straight(plan_, equipment_, *leg); });
        if (legs.empty()) return x + 10.0;
        auto const order = [&](Leg const& leg) {
            auto const a = y_at_start(leg), b = y_at_end(leg);
            bool const start_on_left = comes_from_left(leg, number);
            auto const left = start_on_left ? a : b, right = start_on_left ? b : a;
            return right >= left ? std::pair(1, -left) : std::pair(0, left);
        };
        std::stable_sort(legs.begin(), legs.end(), [&](Leg* a, Leg* b) { return order(*a) < order(*b); });
        x += 14.0;
        bool const is_spine = number == plan_.batteries.columns;
        for (bool const labeled : {is_spine, !is_spine}) {
            Tracks tracks;
            auto const pitch = labeled ? measures::label_pitch : measures::line_pitch;
            for (auto* leg : legs) {
                if (leg->labeled != labeled) continue;
                auto const a = y_at_start(*leg), b = y_at_end(*leg);
                auto const margin = measures::clearance / 2.0;
                leg->at = x + pitch * (tracks.take(std::min(a, b) - margin, std::max(a, b) + margin) + 0.5);
            }
            x += pitch * tracks.lines();
        }
        return x + 8.0;
    }

    // Does this vertical leg begin on the left of its channel?
    bool comes_from_left(Leg const& leg, int number) const {
        if (!plan_.is_first(leg)) {
            auto const& before = plan_.before(leg);
            if (plan_.batteries.rows > plan_.channel(before).number) return true; // from above the batteries
            if (plan_.is_first(before)) return true;
            return plan_.channel(plan_.before(before)).number < number;
        }
        return !plan_.equipment.is_left(plan_.scheme, plan_.wire(leg), 0);
    }

    double room_for_labels(int column) const {
        for (auto const& wire : plan_.scheme.wires)
            for (int i = 0; i < 2; ++i) {
                auto const& end = wire.end(i);
                if (!end.on_battery && plan_.equipment.cells[static_cast<std::size_t>(end.part)].column == column &&
                    plan_.equipment.is_left(plan_.scheme, wire, i))
                    return measures::label_width + 6.0;
            }
        return 16.0;
    }

    Plan& plan_;
    BatteryPlaces const& batteries_;
    EquipmentPlaces const& equipment_;
    ColumnPlaces places_;
};

} // namespace internal

BANKWRIGHT_INLINE bool is_straight(Plan const& plan, EquipmentPlaces const& equipment, Leg const& leg) {
    if (plan.channel(leg).horizontal || !plan.is_first(leg) || !plan.is_last(leg)) return false;
    auto const& wire = plan.wire(leg);
    auto const left = plan.equipment.is_left(plan.scheme, wire, 0);
    return left != plan.equipment.is_left(plan.scheme, wire, 1) &&
           equipment.lug[leg.wire][0] == equipment.lug[leg.wire][1];
}

BANKWRIGHT_INLINE ColumnPlaces place_columns(Plan& plan, BatteryPlaces const& batteries,
                                             EquipmentPlaces const& equipment) {
    return internal::ColumnPlacer(plan, batteries, equipment).place();
}

} // namespace bankwright::drawing
