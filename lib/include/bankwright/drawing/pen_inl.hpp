#pragma once

#include "bankwright/drawing/pen.hpp"

#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace bankwright::drawing {

BANKWRIGHT_INLINE std::string coordinate(double value) {
    auto const tenths = std::llround(value * 10.0);
    auto const rest = std::llabs(tenths % 10);
    auto const sign = tenths < 0 ? "-" : "";
    auto const whole = std::llabs(tenths / 10);
    return rest == 0 ? fmt::format("{}{}", whole == 0 ? "" : sign, whole) : fmt::format("{}{}.{}", sign, whole, rest);
}

BANKWRIGHT_INLINE void Pen::open_group(std::string_view kind, std::string_view title) {
    xml_.open("g").attribute("class", named(kind)).element("title", title);
}

BANKWRIGHT_INLINE void Pen::apply(LineLook const& look) {
    xml_.attribute("fill", look.fill);
    if (look.stroke.empty()) return;
    xml_.attribute("stroke", look.stroke).attribute("stroke-width", coordinate(look.width));
    if (!look.dashes.empty()) xml_.attribute("stroke-dasharray", look.dashes);
}

BANKWRIGHT_INLINE void Pen::text(Point at, std::string_view words, TextLook const& look) {
    if (words.empty()) return;
    xml_.open("text").attribute("x", coordinate(at.x)).attribute("y", coordinate(at.y));
    xml_.attribute("font-size", coordinate(look.size)).attribute("fill", look.fill);
    if (look.bold) xml_.attribute("font-weight", "bold");
    if (look.anchor != Anchor::start) xml_.attribute("text-anchor", look.anchor == Anchor::middle ? "middle" : "end");
    xml_.text(words).close();
}

BANKWRIGHT_INLINE void Pen::box(Box const& box, LineLook const& look, double corner) {
    xml_.open("rect").attribute("x", coordinate(box.x)).attribute("y", coordinate(box.y));
    xml_.attribute("width", coordinate(box.width)).attribute("height", coordinate(box.height));
    if (corner > 0.0) xml_.attribute("rx", coordinate(corner));
    apply(look);
    xml_.close();
}

BANKWRIGHT_INLINE void Pen::circle(Point middle, double radius, LineLook const& look) {
    xml_.open("circle").attribute("cx", coordinate(middle.x)).attribute("cy", coordinate(middle.y));
    xml_.attribute("r", coordinate(radius));
    apply(look);
    xml_.close();
}

namespace internal {

inline std::string coordinates(std::vector<Point> const& points) {
    std::string text;
    for (auto const& point : points)
        text += (text.empty() ? "" : " ") + coordinate(point.x) + "," + coordinate(point.y);
    return text;
}

} // namespace internal

BANKWRIGHT_INLINE void Pen::line(std::vector<Point> const& points, LineLook const& look) {
    xml_.open("polyline").attribute("points", internal::coordinates(points));
    apply(look);
    xml_.attribute("stroke-linejoin", "round").close();
}

BANKWRIGHT_INLINE void Pen::shape(std::vector<Point> const& corners, LineLook const& look) {
    xml_.open("polygon").attribute("points", internal::coordinates(corners));
    apply(look);
    xml_.close();
}

BANKWRIGHT_INLINE void Pen::path(std::string_view commands, LineLook const& look) {
    xml_.open("path").attribute("d", commands);
    apply(look);
    xml_.close();
}

} // namespace bankwright::drawing
