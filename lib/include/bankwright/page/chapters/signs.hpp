// The signs of a verdict and of a finding, as on the drawing: an octagon, a triangle, a disc; a ring with a tick where
// nothing was found. Beside a word that says the same, so hidden from those who hear the page.
#pragma once

#include "bankwright/drawing/badges.hpp"

#include <optional>
#include <string>
#include <utility>

namespace bankwright::page {

inline std::string sign(std::optional<Level> level) {
    using namespace drawing;
    Pen pen("sign");
    if (level) {
        draw_badge(pen, {8.0, 8.0}, *level, 14.0);
    } else {
        pen.circle({8.0, 8.0}, 6.8, {"#0b5d33", 1.5, {}, ink::paper});
        pen.line({{4.6, 8.4}, {7.2, 11.0}, {11.6, 5.4}}, {"#0b5d33", 2.0});
    }
    XmlWriter svg;
    svg.open("svg").attribute("xmlns", "http://www.w3.org/2000/svg").attribute("viewBox", "0 0 16 16");
    svg.attribute("aria-hidden", "true").markup(std::move(pen.xml()).str());
    return std::move(svg).str();
}

} // namespace bankwright::page
