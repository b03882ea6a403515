#pragma once

#include "bankwright/drawing/layout/column_places.hpp"
#include "bankwright/drawing/layout/equipment_places.hpp"
#include "bankwright/drawing/layout/lay_out.hpp"
#include "bankwright/drawing/layout/measures.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace bankwright::drawing {

namespace internal {

class Layout {
public:
    explicit Layout(Bank const& bank) : bank_(bank) {
        plan_.scheme = scheme_of(bank);
        plan_.batteries = battery_rows(plan_.scheme);
        for (std::size_t w = 0; w < plan_.scheme.wires.size(); ++w)
            if (plan_.batteries.is_series_jumper[w]) plan_.scheme.wires[w].side = WireSide::between;
        plan_.equipment = equipment_grid(plan_.scheme, columns_beside(plan_.batteries));
        plan_.routes = channel_routes(plan_.scheme, plan_.batteries, plan_.equipment);
        for (std::size_t w = 0; w < plan_.routes.size(); ++w) {
            auto& legs = plan_.legs.emplace_back();
            auto const labeled = needs_labelled_line(plan_.scheme.wires[w]);
            for (std::size_t step = 0; step < plan_.routes[w].size(); ++step) {
                auto const beside_batteries = plan_.routes[w][step].horizontal
                                                  ? plan_.routes[w][step].number < plan_.batteries.rows
                                                  : plan_.routes[w][step].number < plan_.batteries.columns;
                bool const own = plan_.scheme.wires[w].joins_batteries();
                legs.push_back({w, step, labeled && (own || !beside_batteries), 0.0});
            }
        }
    }

    Drawing make() {
        batteries_ = place_batteries(plan_);
        equipment_ = place_equipment(plan_);
        straighten();
        fan_out_lugs();
        columns_ = place_columns(plan_, batteries_, equipment_);
        return draw();
    }

private:
    // As many as a screen holds beside the batteries.
    static int columns_beside(BatteryRows const& rows) {
        int stacks = 0; // strings side by side, each with its links
        for (auto const strings : rows.strings)
            stacks = std::max(stacks, rows.rows > 1 ? strings : 0);
        auto const batteries =
            rows.columns * (measures::battery_width + measures::battery_gap) + 2.0 * measures::label_pitch * stacks;
        auto const free = measures::screen - 2.0 * measures::margin - measures::spine - batteries;
        return std::max(1, static_cast<int>(free / measures::equipment_pitch));
    }

    // A conductor that ends on the left of some part has its label there.
    bool needs_labelled_line(Wire const& wire) const {
        for (int i = 0; i < 2; ++i)
            if (!wire.end(i).on_battery && plan_.equipment.is_left(plan_.scheme, wire, i)) return false;
        return true;
    }

    // A lead from above the batteries that misses its terminal by a hair goes straight into it.
    void straighten() {
        constexpr double hair = 8.0;
        for (std::size_t w = 0; w < plan_.legs.size(); ++w) {
            auto const& wire = plan_.scheme.wires[w];
            if (plan_.legs[w].size() != 2 || wire.from.on_battery == wire.to.on_battery) continue;
            auto& leg = wire.from.on_battery ? plan_.legs[w].front() : plan_.legs[w].back();
            auto const y = equipment_.lug[w][wire.from.on_battery ? 1 : 0];
            auto const along = plan_.legs_in(plan_.channel(leg));
            bool const free = std::all_of(along.begin(), along.end(), [&](Leg const* other) {
                return other == &leg || std::abs(other->at - y) >= measures::clearance;
            });
            if (free && std::abs(leg.at - y) < hair) leg.at = y;
        }
    }

    // Conductors on one post leave it side by side, so that none need cross another on the way up to its line.
    void fan_out_lugs() {
        struct Lug {
            std::size_t wire;
            int end;
            double order;
        };
        std::map<std::pair<int, int>, std::vector<Lug>> posts;
        for (std::size_t w = 0; w < plan_.scheme.wires.size(); ++w) {
            auto const& wire = plan_.scheme.wires[w];
            for (int i = 0; i < 2; ++i) {
                if (!wire.end(i).on_battery) continue;
                auto const& leg = i == 0 ? plan_.legs[w].front() : plan_.legs[w].back();
                auto const here = batteries_.post(plan_.batteries, wire.end(i)).x;
                auto const single = plan_.legs[w].size() == 1;
                auto const column = plan_.batteries.cells[static_cast<std::size_t>(wire.end(i).part)].column;
                bool const leftwards =
                    single ? batteries_.post(plan_.batteries, wire.end(1 - i)).x < here
                           : plan_.channel(i == 0 ? plan_.after(leg) : plan_.before(leg)).number <= column;
                posts[{wire.end(i).part, wire.end(i).terminal}].push_back({w, i, leftwards ? -leg.at : 1e9 + leg.at});
            }
        }
        lug_x_.assign(plan_.scheme.wires.size(), {0.0, 0.0});
        for (auto& [post, lugs] : posts) {
            std::stable_sort(lugs.begin(), lugs.end(), [](auto const& a, auto const& b) { return a.order < b.order; });
            auto const count = static_cast<double>(lugs.size());
            auto const pitch = std::min(measures::lug_pitch, 2.0 * measures::post_reach / std::max(1.0, count - 1.0));
            auto const middle = batteries_.post(plan_.batteries, {true, post.first, post.second}).x;
            for (std::size_t k = 0; k < lugs.size(); ++k)
                lug_x_[lugs[k].wire][static_cast<std::size_t>(lugs[k].end)] =
                    middle + pitch * (static_cast<double>(k) - (count - 1.0) / 2.0);
        }
    }

    // --- the drawing ------------------------------------------------------------------------------------------------
    Drawing draw() const {
        Drawing drawing;
        drawing.undrawn = plan_.scheme.undrawn;
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b)
            drawing.parts.push_back(battery(b));
        for (std::size_t e = 0; e < plan_.scheme.equipment.size(); ++e)
            drawing.parts.push_back(equipment(e));
        for (std::size_t w = 0; w < plan_.scheme.wires.size(); ++w)
            drawing.wires.push_back(wire(w));
        drawing.width = columns_.right + measures::margin;
        drawing.height = std::max(batteries_.bottom, equipment_.bottom) + 12.0;
        if (!bank_.batteries.empty())
            drawing.batteries =
                Box{measures::margin - 8.0, measures::header - 8.0, batteries_.right - measures::margin + 16.0,
                    batteries_.bottom - measures::header + 16.0};
        return drawing;
    }

    PartPlace battery(std::size_t b) const {
        PartPlace place{PartKind::battery,
                        b,
                        bank_.batteries[b].id,
                        batteries_.boxes[b],
                        plan_.batteries.cells[b].turned,
                        plan_.scheme.battery_in_fault_loop[b],
                        {}};
        for (int t = 0; t < 2; ++t) {
            auto const post = batteries_.post(plan_.batteries, {true, static_cast<int>(b), t});
            place.terminals.push_back(
                {place.id + (t == 0 ? "+" : "-"),
                 {post.x - measures::post_reach - 1.0, post.y - 10.0, 2.0 * measures::post_reach + 2.0, 20.0}});
        }
        return place;
    }

    Box box_of(std::size_t e) const {
        auto const column = static_cast<std::size_t>(plan_.equipment.cells[e].column);
        return {columns_.left[column], equipment_.top[e], equipment_.width[e], equipment_.height[e]};
    }

    PartPlace equipment(std::size_t e) const {
        auto const& part = plan_.scheme.equipment[e];
        auto const box = box_of(e);
        PartPlace place{part.kind, part.index, part.id, box, plan_.equipment.cells[e].turned, part.in_fault_loop, {}};
        for (std::size_t t = 0; t < part.terminals.size(); ++t) {
            auto const& reach = equipment_.terminals[e][t];
            auto const x = part.kind == PartKind::busbar ? box.center().x : reach.left ? box.x : box.right();
            place.terminals.push_back(
                {part.terminals[t], around({x, reach.top}, {x, reach.bottom}, measures::terminal_half)});
        }
        return place;
    }

    Point lug(std::size_t w, int end) const {
        auto const& at = plan_.scheme.wires[w].end(end);
        auto const which = static_cast<std::size_t>(end);
        if (at.on_battery) return {lug_x_[w][which], batteries_.post(plan_.batteries, at).y};
        auto const part = static_cast<std::size_t>(at.part);
        auto const box = box_of(part);
        auto const y = equipment_.lug[w][which];
        if (plan_.scheme.equipment[part].kind == PartKind::busbar) return {box.center().x, y};
        return {plan_.equipment.is_left(plan_.scheme, plan_.scheme.wires[w], end) ? box.x : box.right(), y};
    }

    // Leaves out what lies on a straight line between its neighbors.
    static void keep_corners(std::vector<Point>& path) {
        std::vector<Point> kept;
        for (auto const& point : path) {
            auto const n = kept.size();
            if (n > 0 && kept[n - 1] == point) continue;
            bool const straight = n > 1 && ((kept[n - 2].x == kept[n - 1].x && kept[n - 1].x == point.x) ||
                                            (kept[n - 2].y == kept[n - 1].y && kept[n - 1].y == point.y));
            if (straight) kept.pop_back();
            kept.push_back(point);
        }
        path = std::move(kept);
    }

    WirePlace wire(std::size_t w) const {
        auto const& wire = plan_.scheme.wires[w];
        auto const& runs = wire.kind == PartKind::jumper ? bank_.jumpers : bank_.cables;
        WirePlace place{wire.kind, wire.index, runs[wire.index].conductor.id, wire.side, wire.in_fault_loop, {}, {}};
        auto const start = lug(w, 0), finish = lug(w, 1);
        auto& path = place.path;
        path.push_back(start);
        auto const& legs = plan_.legs[w];
        auto const& first = legs.front();
        if (!(legs.size() == 1 && is_straight(plan_, equipment_, first))) {
            path.push_back(plan_.channel(first).horizontal ? Point{start.x, first.at} : Point{first.at, start.y});
            for (std::size_t k = 0; k + 1 < legs.size(); ++k)
                path.push_back(plan_.channel(legs[k]).horizontal ? Point{legs[k + 1].at, legs[k].at}
                                                                 : Point{legs[k].at, legs[k + 1].at});
            auto const& last = legs.back();
            path.push_back(plan_.channel(last).horizontal ? Point{finish.x, last.at} : Point{last.at, finish.y});
        }
        path.push_back(finish);
        keep_corners(path);
        for (int i = 1; i >= 0; --i) {
            auto const& end = wire.end(i);
            if (end.on_battery || !plan_.equipment.is_left(plan_.scheme, wire, i)) continue;
            auto const left = box_of(static_cast<std::size_t>(end.part)).x;
            place.label_room =
                Box{left - measures::label_width - measures::terminal_half, lug(w, i).y - measures::label_pitch / 2.0,
                    measures::label_width, measures::label_pitch};
            break;
        }
        return place;
    }

    Bank const& bank_;
    Plan plan_;
    BatteryPlaces batteries_;
    EquipmentPlaces equipment_;
    std::vector<std::array<double, 2>> lug_x_; // by wire, by end: of ends on a battery
    ColumnPlaces columns_;
};

} // namespace internal

BANKWRIGHT_INLINE Drawing lay_out(Bank const& bank) { return internal::Layout(bank).make(); }

} // namespace bankwright::drawing
