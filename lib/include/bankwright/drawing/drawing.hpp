// A bank as a wiring diagram: where does each battery, part and terminal stand, and which way does each conductor run?
// Lengths are in pixels of 1/96 in, x to the right, y down; nothing here knows of SVG.
#pragma once

#include "bankwright/bank/part_kind.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bankwright::drawing {

struct Point {
    double x = 0.0;
    double y = 0.0;
    friend bool operator==(Point const&, Point const&) = default;
};

struct Box {
    double x = 0.0;
    double y = 0.0;
    double width = 0.0;
    double height = 0.0;

    double right() const { return x + width; }
    double bottom() const { return y + height; }
    Point center() const { return {x + width / 2.0, y + height / 2.0}; }
    bool holds(Point p) const { return p.x >= x && p.x <= right() && p.y >= y && p.y <= bottom(); }
    friend bool operator==(Box const&, Box const&) = default;
};

// Do the insides meet?
inline bool overlap(Box const& a, Box const& b) {
    return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

// The rectangle that a straight horizontal or vertical line from a to b fills, `margin` wide on every side.
inline Box around(Point a, Point b, double margin = 0.0) {
    auto const left = std::min(a.x, b.x), top = std::min(a.y, b.y);
    return {left - margin, top - margin, std::max(a.x, b.x) - left + 2.0 * margin,
            std::max(a.y, b.y) - top + 2.0 * margin};
}

// What a conductor is by its place in the wiring, whatever the color of its insulation.
enum class WireSide {
    positive,
    negative,
    between, // a series jumper, or a tie part of the way up: positive to one battery, negative to the next
};

struct TerminalPlace {
    std::string name; // "A+", "CB.line", "plus"
    Box pad;          // every conductor landed here ends inside
};

struct PartPlace {
    PartKind kind = PartKind::battery;
    std::size_t index = 0; // in its vector of the Bank
    std::string id;
    Box box;             // everything that is drawn of it, words included
    bool turned = false; // a battery with its + on the left; a device with its load side, a plug, toward the bank
    bool in_fault_loop = false;
    std::vector<TerminalPlace> terminals; // in the order of terminals_of()
};

struct WirePlace {
    PartKind kind = PartKind::cable;
    std::size_t index = 0;
    std::string id;
    WireSide side = WireSide::between;
    bool in_fault_loop = false;
    std::vector<Point> path;       // from `from` to `to`, horizontal and vertical by turns
    std::optional<Box> label_room; // kept free for its label, on its own line
};

struct Drawing {
    double width = 0.0;
    double height = 0.0;
    std::vector<PartPlace> parts;     // batteries first, then in the order of for_each_part
    std::vector<WirePlace> wires;     // jumpers, then cables
    std::vector<std::string> undrawn; // conductors with an end on no terminal of this bank
    std::optional<Box> batteries;     // around all of them and what joins them
};

} // namespace bankwright::drawing
