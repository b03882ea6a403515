// What would a rigger hold against this drawing? Geometry alone: boxes, lines and pads.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/drawing/drawing.hpp"

#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace bankwright::support {

class DrawingFaults {
public:
    DrawingFaults(Bank const& bank, drawing::Drawing const& drawing) : bank_(bank), drawing_(drawing) {}

    // In words; empty for a sound drawing.
    std::vector<std::string> find() {
        everything_is_there();
        parts_stand_apart();
        for (auto const& wire : drawing_.wires)
            check_path(wire);
        lines_stay_apart();
        return faults_;
    }

private:
    using Box = drawing::Box;
    using Point = drawing::Point;

    static Box shrunk(Box const& b, double by) { return {b.x + by, b.y + by, b.width - 2 * by, b.height - 2 * by}; }
    bool on_page(Box const& b) const {
        return b.x >= 0 && b.y >= 0 && b.right() <= drawing_.width && b.bottom() <= drawing_.height;
    }

    void everything_is_there() {
        std::size_t parts = 0;
        for_each_part(bank_, [&](PartKind, auto const&) { ++parts; });
        if (drawing_.parts.size() + drawing_.wires.size() + drawing_.undrawn.size() != parts)
            faults_.push_back("a part is missing or drawn twice");
    }

    void parts_stand_apart() {
        for (std::size_t i = 0; i < drawing_.parts.size(); ++i) {
            auto const& part = drawing_.parts[i];
            if (!on_page(part.box)) faults_.push_back(part.id + " leaves the page");
            for (std::size_t j = i + 1; j < drawing_.parts.size(); ++j)
                if (overlap(part.box, drawing_.parts[j].box))
                    faults_.push_back(part.id + " overlaps " + drawing_.parts[j].id);
            for (auto const& terminal : part.terminals)
                pads_[terminal.name] = terminal.pad;
        }
    }

    void check_path(drawing::WirePlace const& wire) {
        auto const& run = (wire.kind == PartKind::jumper ? bank_.jumpers : bank_.cables)[wire.index];
        auto const& path = wire.path;
        if (path.size() < 2) return faults_.push_back(wire.id + " has no line");
        if (!pads_.at(run.from).holds(path.front())) faults_.push_back(wire.id + " does not begin at " + run.from);
        if (!pads_.at(run.to).holds(path.back())) faults_.push_back(wire.id + " does not end at " + run.to);
        for (std::size_t i = 0; i + 1 < path.size(); ++i) {
            auto const a = path[i], b = path[i + 1];
            if ((a.x == b.x) == (a.y == b.y)) faults_.push_back(wire.id + " runs askew or nowhere");
            auto const line = drawing::around(a, b);
            if (!on_page(line)) faults_.push_back(wire.id + " leaves the page");
            for (auto const& part : drawing_.parts) {
                if (!overlap(drawing::around(a, b, 0.1), shrunk(part.box, 1.0))) continue;
                // Into a part only to end there, straight at the terminal.
                bool const ends =
                    (i == 0 && belongs(run.from, part)) || (i + 2 == path.size() && belongs(run.to, part));
                auto const inside = part.kind == PartKind::busbar ? part.box.width / 2.0 + 1.0 : 20.0;
                if (!ends || within(line, part.box) > inside) faults_.push_back(wire.id + " runs through " + part.id);
            }
        }
    }
    static bool belongs(std::string const& terminal, drawing::PartPlace const& part) {
        for (auto const& own : part.terminals)
            if (own.name == terminal) return true;
        return false;
    }
    // Length of the line inside the box.
    static double within(Box const& line, Box const& box) {
        return std::max(std::min(line.right(), box.right()) - std::max(line.x, box.x),
                        std::min(line.bottom(), box.bottom()) - std::max(line.y, box.y));
    }

    // Lines of different conductors may cross, not run on top of each other.
    void lines_stay_apart() {
        auto const& wires = drawing_.wires;
        for (std::size_t v = 0; v < wires.size(); ++v)
            for (std::size_t w = v + 1; w < wires.size(); ++w)
                for (std::size_t i = 0; i + 1 < wires[v].path.size(); ++i)
                    for (std::size_t j = 0; j + 1 < wires[w].path.size(); ++j)
                        if (coincide(wires[v].path[i], wires[v].path[i + 1], wires[w].path[j], wires[w].path[j + 1]))
                            faults_.push_back(wires[v].id + " runs on top of " + wires[w].id);
    }
    static bool coincide(Point a, Point b, Point c, Point d) {
        bool const upright = a.x == b.x;
        if (upright != (c.x == d.x)) return false;
        auto const one = drawing::around(a, b), other = drawing::around(c, d);
        constexpr double near = 0.5;
        if (upright)
            return std::abs(a.x - c.x) < near && one.y < other.bottom() - near && other.y < one.bottom() - near;
        return std::abs(a.y - c.y) < near && one.x < other.right() - near && other.x < one.right() - near;
    }

    Bank const& bank_;
    drawing::Drawing const& drawing_;
    std::map<std::string, Box> pads_;
    std::vector<std::string> faults_;
};

inline std::vector<std::string> faults_of(Bank const& bank, drawing::Drawing const& drawing) {
    return DrawingFaults(bank, drawing).find();
}

} // namespace bankwright::support
