#pragma once

#include "bankwright/drawing/layout/measures.hpp"
#include "bankwright/drawing/wires/channel_routes.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <queue>
#include <utility>

namespace bankwright::drawing {

namespace internal {

// Dijkstra's method over the crossings of channels, with roughly the lengths that the drawing will have.
class Router {
public:
    Router(Scheme const& scheme, BatteryRows const& batteries, EquipmentGrid const& equipment)
        : scheme_(scheme), batteries_(batteries),
          equipment_(equipment), map_{batteries.rows, batteries.columns, equipment.rows, equipment.columns} {
        for (int h = 0; h < map_.horizontal(); ++h)
            for (int v = first_vertical(h); v <= last_vertical(h); ++v)
                at_.push_back({h, v});
        for (int h = 0, first = 0; h < map_.horizontal(); ++h) {
            first_.push_back(first - first_vertical(h));
            first += last_vertical(h) - first_vertical(h) + 1;
            spine_order_.push_back(h);
        }
        std::stable_sort(spine_order_.begin(), spine_order_.end(), [&](int a, int b) { return y_of(a) < y_of(b); });
    }

    Route route(Wire const& wire) {
        auto const from = access(wire, 0), to = access(wire, 1);
        if (from.channel == to.channel) return {from.channel};
        search(from, wire.joins_batteries());
        return walk_back(to);
    }

private:
    struct Crossing {
        int h = 0;
        int v = 0;
    };
    struct Access { // where a terminal gives on a channel
        Channel channel;
        double along = 0.0;          // its place along that channel
        int crossings[2] = {-1, -1}; // the nearest on either side
    };
    static constexpr double bend = 60.0;
    static constexpr double far = std::numeric_limits<double>::infinity();

    bool among_batteries(int h) const { return h < map_.battery_rows; }
    int first_vertical(int h) const { return among_batteries(h) ? 0 : map_.spine(); }
    int last_vertical(int h) const { return among_batteries(h) ? map_.spine() : map_.vertical() - 1; }
    int crossing(int h, int v) const { return first_[static_cast<std::size_t>(h)] + v; }

    double x_of(int v) const {
        auto const column = measures::battery_width + measures::battery_gap;
        return v <= map_.spine() ? v * column : map_.spine() * column + (v - map_.spine()) * 250.0;
    }
    double y_of(int h) const {
        if (among_batteries(h)) return h * 230.0;
        return -30.0 + (h - map_.battery_rows) * 190.0;
    }

    Access access(Wire const& wire, int which) const {
        auto const& end = wire.end(which);
        if (end.on_battery) {
            auto const& cell = batteries_.cells[static_cast<std::size_t>(end.part)];
            bool const on_the_right = (end.terminal == 0) != cell.turned;
            return {{true, cell.row},
                    x_of(cell.column) + (on_the_right ? 0.75 : 0.25) * measures::battery_width,
                    {crossing(cell.row, cell.column), crossing(cell.row, cell.column + 1)}};
        }
        auto const& cell = equipment_.cells[static_cast<std::size_t>(end.part)];
        auto const v = map_.spine() + cell.column + (equipment_.is_left(scheme_, wire, which) ? 0 : 1);
        auto const h = map_.battery_rows + cell.row;
        // A second terminal lies lower: from there the channel below is the nearer one.
        auto const& part = scheme_.equipment[static_cast<std::size_t>(end.part)];
        bool const low = part.terminals.size() > 2 || part.is_sink() ? end.terminal % 2 == 1 : false;
        return {{false, v}, y_of(h) + (low ? 120.0 : 70.0), {crossing(h, v), crossing(h + 1, v)}};
    }

    // State: 2 x crossing, + 1 where it was reached along a vertical channel.
    void search(Access const& from, bool among_batteries_only) {
        cost_.assign(2 * at_.size(), far);
        came_.assign(2 * at_.size(), -1);
        std::priority_queue<std::pair<double, int>, std::vector<std::pair<double, int>>, std::greater<>> queue;
        auto const reach = [&](int crossing, bool vertically, double cost, int by) {
            auto const state = 2 * static_cast<std::size_t>(crossing) + (vertically ? 1 : 0);
            if (!(cost < cost_[state])) return;
            cost_[state] = cost;
            came_[state] = by;
            queue.push({cost, static_cast<int>(state)});
        };
        for (auto const c : from.crossings)
            reach(c, !from.channel.horizontal, distance(from, c), -1);
        while (!queue.empty()) {
            auto const [cost, state] = queue.top();
            queue.pop();
            if (cost > cost_[static_cast<std::size_t>(state)]) continue;
            auto const [h, v] = at_[static_cast<std::size_t>(state / 2)];
            bool const vertical = state % 2 == 1;
            bool const passing = among_batteries_only && !among_batteries(h); // down the spine, past the equipment
            for (auto const to : {v - 1, v + 1})
                if (!passing && to >= first_vertical(h) && to <= last_vertical(h))
                    reach(crossing(h, to), false, cost + std::abs(x_of(to) - x_of(v)) + (vertical ? bend : 0.0), state);
            if (v < map_.spine() && !among_batteries_only) continue; // space there is for the bank's own links
            for (auto const to : neighbors(h, v))
                reach(crossing(to, v), true, cost + std::abs(y_of(to) - y_of(h)) + (vertical ? 0.0 : bend), state);
        }
    }

    // The horizontal channels next to this one along a vertical channel.
    std::vector<int> neighbors(int h, int v) const {
        std::vector<int> found;
        if (v == map_.spine()) {
            auto const at = std::find(spine_order_.begin(), spine_order_.end(), h);
            if (at != spine_order_.begin()) found.push_back(at[-1]);
            if (at + 1 != spine_order_.end()) found.push_back(at[1]);
            return found;
        }
        for (auto const to : {h - 1, h + 1})
            if (to >= 0 && to < map_.horizontal() && among_batteries(to) == among_batteries(h)) found.push_back(to);
        return found;
    }

    double distance(Access const& a, int crossing) const {
        auto const [h, v] = at_[static_cast<std::size_t>(crossing)];
        return std::abs(a.along - (a.channel.horizontal ? x_of(v) : y_of(h)));
    }

    Route walk_back(Access const& to) const {
        std::pair<double, int> best{far, -1};
        for (auto const c : to.crossings)
            for (int vertically = 0; vertically < 2; ++vertically) {
                auto const state = 2 * c + vertically;
                bool const bends = (vertically == 1) == to.channel.horizontal;
                best = std::min(
                    best, {cost_[static_cast<std::size_t>(state)] + distance(to, c) + (bends ? bend : 0.0), state});
            }
        Route route{to.channel};
        for (auto state = best.second; state >= 0; state = came_[static_cast<std::size_t>(state)]) {
            auto const [h, v] = at_[static_cast<std::size_t>(state / 2)];
            Channel const channel = state % 2 == 1 ? Channel{false, v} : Channel{true, h};
            if (!(channel == route.back())) route.push_back(channel);
        }
        std::reverse(route.begin(), route.end());
        return route;
    }

    Scheme const& scheme_;
    BatteryRows const& batteries_;
    EquipmentGrid const& equipment_;
    ChannelMap map_;
    std::vector<Crossing> at_;
    std::vector<int> first_;       // by horizontal channel: its crossing with vertical channel 0, if it had one
    std::vector<int> spine_order_; // horizontal channels from the top, roughly
    std::vector<double> cost_;
    std::vector<int> came_;
};

} // namespace internal

BANKWRIGHT_INLINE std::vector<Route> channel_routes(Scheme const& scheme, BatteryRows const& batteries,
                                                    EquipmentGrid const& equipment) {
    internal::Router router(scheme, batteries, equipment);
    std::vector<Route> routes;
    for (auto const& wire : scheme.wires)
        routes.push_back(router.route(wire));
    return routes;
}

} // namespace bankwright::drawing
