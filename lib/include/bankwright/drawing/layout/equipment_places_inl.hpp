#pragma once

#include "bankwright/drawing/layout/equipment_places.hpp"
#include "bankwright/drawing/layout/measures.hpp"
#include "bankwright/drawing/wires/tracks.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bankwright::drawing {

namespace internal {

class EquipmentPlacer {
public:
    explicit EquipmentPlacer(Plan& plan) : plan_(plan) {
        auto const count = plan.scheme.equipment.size();
        places_.top.assign(count, 0.0);
        places_.height.assign(count, 0.0);
        places_.lug.assign(plan.scheme.wires.size(), {0.0, 0.0});
        for (auto const& part : plan.scheme.equipment) {
            places_.width.push_back(width_of(part.kind));
            places_.terminals.emplace_back(part.terminals.size());
        }
        for (auto& of_wire : plan.legs)
            for (auto& leg : of_wire)
                if (auto const channel = plan.channel(leg);
                    channel.horizontal && plan_.batteries.rows > channel.number && reaches_spine(leg))
                    lines_into_spine_.push_back({leg.at, leg.wire});
    }

    EquipmentPlaces place() {
        double y = measures::header;
        for (int row = 0; row < plan_.equipment.rows; ++row) {
            y = lines_above(row, y);
            y = parts_of(row, y);
        }
        places_.bottom = lines_above(plan_.equipment.rows, y);
        return std::move(places_);
    }

private:
    struct Line {
        double y = 0.0;
        std::size_t wire = 0;
    };

    static double width_of(PartKind kind) {
        switch (kind) {
        case PartKind::busbar:
            return measures::busbar_width;
        case PartKind::connector:
        case PartKind::converter:
            return measures::connector_width;
        case PartKind::motor:
        case PartKind::load:
        case PartKind::charger:
            return measures::load_width;
        default:
            return measures::device_width;
        }
    }

    bool reaches_spine(Leg const& leg) const {
        auto const spine = Channel{false, plan_.batteries.columns};
        return (!plan_.is_first(leg) && plan_.channel(plan_.before(leg)) == spine) ||
               (!plan_.is_last(leg) && plan_.channel(plan_.after(leg)) == spine);
    }

    // The first height from `y` down at which none of these lines, of other conductors, runs.
    static double clear_of(std::vector<Line> const& lines, std::size_t wire, double y) {
        auto const near = [&](Line const& line) {
            return line.wire != wire && std::abs(line.y - y) < measures::clearance - 1e-6;
        };
        for (bool moved = true; moved;) {
            moved = false;
            for (auto const& line : lines)
                if (near(line)) {
                    y = line.y + measures::clearance;
                    moved = true;
                }
        }
        return y;
    }

    // --- the horizontal channel above a row -------------------------------------------------------------------------
    double lines_above(int row, double y) {
        auto legs = plan_.legs_in({true, plan_.batteries.rows + row});
        auto const key = [&](Leg const& leg, bool start) {
            return static_cast<double>(plan_.channel(start ? plan_.before(leg) : plan_.after(leg)).number);
        };
        std::stable_sort(legs.begin(), legs.end(), [&](Leg* a, Leg* b) {
            return std::abs(key(*a, true) - key(*a, false)) > std::abs(key(*b, true) - key(*b, false));
        });
        y += 10.0;
        for (bool const labeled : {false, true}) {
            Tracks tracks;
            std::vector<std::vector<Leg*>> lines;
            for (auto* leg : legs) {
                if (leg->labeled != labeled) continue;
                auto const line = static_cast<std::size_t>(tracks.take(key(*leg, true), key(*leg, false)));
                lines.resize(std::max(lines.size(), line + 1));
                lines[line].push_back(leg);
            }
            auto const half = labeled ? measures::label_pitch / 2.0 : measures::line_pitch / 2.0;
            for (auto const& line : lines) {
                y = straight_on(line, y + half);
                for (auto const* leg : line)
                    if (reaches_spine(*leg)) y = clear_of(lines_into_spine_, leg->wire, y);
                for (auto* leg : line) {
                    leg->at = y;
                    if (reaches_spine(*leg)) lines_into_spine_.push_back({y, leg->wire});
                }
                y += half;
            }
        }
        return y + 6.0;
    }

    // A line that comes from above the batteries goes straight on at its height there, if that is not much further
    // down.
    double straight_on(std::vector<Leg*> const& line, double y) const {
        for (auto const* leg : line) {
            auto const* next = plan_.is_first(*leg) ? nullptr : &plan_.before(*leg);
            for (auto const* spine : {next, plan_.is_last(*leg) ? nullptr : &plan_.after(*leg)}) {
                if (!spine || plan_.channel(*spine) != Channel{false, plan_.batteries.columns}) continue;
                bool const backwards = spine == next;
                if (backwards ? plan_.is_first(*spine) : plan_.is_last(*spine)) continue;
                auto const& above = backwards ? plan_.before(*spine) : plan_.after(*spine);
                if (plan_.channel(above).number < plan_.batteries.rows && above.at > y &&
                    above.at < y + measures::reserve)
                    return above.at;
            }
        }
        return y;
    }

    // --- one row of parts -------------------------------------------------------------------------------------------
    double parts_of(int row, double top) {
        std::vector<int> parts;
        for (std::size_t e = 0; e < plan_.equipment.cells.size(); ++e)
            if (plan_.equipment.cells[e].row == row) parts.push_back(static_cast<int>(e));
        std::sort(parts.begin(), parts.end(), [&](int a, int b) { return cell(a).column < cell(b).column; });
        double bottom = top;
        std::vector<Line> from_the_left; // conductors that leave the part before to the right
        int previous = -1;
        for (auto const e : parts) {
            if (cell(e).column == 0)
                from_the_left = lines_into_spine_;
            else if (previous < 0 || cell(previous).column + 1 != cell(e).column)
                from_the_left.clear();
            bottom = std::max(bottom, place_part(e, top, from_the_left));
            previous = e;
        }
        return bottom;
    }

    EquipmentCell const& cell(int e) const { return plan_.equipment.cells[static_cast<std::size_t>(e)]; }

    struct Landing {
        std::size_t wire = 0;
        int end = 0;
        double other = 0.0; // roughly how far down the other end lies
    };

    std::vector<Landing> landings(int e, int terminal, bool left) const {
        std::vector<Landing> found;
        auto const& wires = plan_.scheme.wires;
        for (std::size_t w = 0; w < wires.size(); ++w)
            for (int i = 0; i < 2; ++i) {
                auto const& here = wires[w].end(i);
                if (here.on_battery || here.part != e || here.terminal != terminal) continue;
                if (plan_.equipment.is_left(plan_.scheme, wires[w], i) != left) continue;
                auto const& there = wires[w].end(1 - i);
                auto const other = there.on_battery
                                       ? plan_.batteries.cells[static_cast<std::size_t>(there.part)].row - 100.0
                                       : cell(there.part).row + 0.1 * there.terminal;
                found.push_back({w, i, other});
            }
        std::stable_sort(found.begin(), found.end(), [](auto const& a, auto const& b) { return a.other < b.other; });
        return found;
    }

    // Is this terminal on the left, on the right?
    std::pair<bool, bool> sides(int e, int terminal) const {
        auto const& part = plan_.scheme.equipment[static_cast<std::size_t>(e)];
        if (part.is_sink()) return {true, false};
        if (part.kind == PartKind::busbar) return {true, true};
        bool const left = (part.side_of(terminal) == 0) != cell(e).turned;
        return {left, !left};
    }

    // Returns where the part ends below, and leaves in `lines` what leaves it to the right.
    double place_part(int e, double top, std::vector<Line>& lines) {
        auto const i = static_cast<std::size_t>(e);
        auto& reaches = places_.terminals[i];
        double next = top + measures::anchor;
        std::vector<double> first_on_the_left;
        double lowest = next;
        for (std::size_t t = 0; t < reaches.size(); ++t) {
            if (!sides(e, static_cast<int>(t)).first) continue;
            auto& reach = reaches[t];
            auto const landed = landings(e, static_cast<int>(t), true);
            reach = {true, next, next};
            for (std::size_t k = 0; k < landed.size(); ++k) {
                auto y = next;
                for (auto const& line : lines) // straight on from the part before
                    if (line.wire == landed[k].wire && line.y > y && line.y < y + measures::label_pitch) y = line.y;
                y = clear_of(lines, landed[k].wire, y);
                places_.lug[landed[k].wire][static_cast<std::size_t>(landed[k].end)] = y;
                if (k == 0) reach.top = y;
                reach.bottom = y;
                next = y + measures::label_pitch;
            }
            if (landed.empty()) next += measures::label_pitch;
            first_on_the_left.push_back(reach.top);
            lowest = std::max(lowest, reach.bottom);
        }
        if (!first_on_the_left.empty())
            top = first_on_the_left.front() - measures::anchor; // its name goes down with it
        places_.top[i] = top;
        lines.clear();
        next = top + measures::anchor;
        std::size_t opposite = 0;
        for (std::size_t t = 0; t < reaches.size(); ++t) {
            auto const [left, right] = sides(e, static_cast<int>(t));
            if (!right) continue;
            auto& reach = reaches[t];
            if (opposite < first_on_the_left.size()) next = std::max(next, first_on_the_left[opposite]);
            ++opposite;
            if (!left) reach = {false, next, next};
            for (auto const& landed : landings(e, static_cast<int>(t), false)) {
                places_.lug[landed.wire][static_cast<std::size_t>(landed.end)] = next;
                lines.push_back({next, landed.wire});
                reach.bottom = std::max(reach.bottom, next);
                next += measures::stub_pitch;
            }
            next = std::max(next, reach.bottom + measures::stub_pitch);
            lowest = std::max(lowest, reach.bottom);
        }
        places_.height[i] = lowest - top + measures::footer;
        return top + places_.height[i];
    }

    Plan& plan_;
    EquipmentPlaces places_;
    std::vector<Line> lines_into_spine_; // horizontal lines that end in the spine
};

} // namespace internal

BANKWRIGHT_INLINE EquipmentPlaces place_equipment(Plan& plan) { return internal::EquipmentPlacer(plan).place(); }

} // namespace bankwright::drawing
