// The signs of a finding, told apart by shape and by word: an octagon for an error, a triangle for a warning, a disc
// for a note.
#pragma once

#include "bankwright/drawing/pen.hpp"
#include "bankwright/drawing/symbols/marks.hpp"
#include "bankwright/drawing/text_fit.hpp"

#include <cmath>
#include <string>
#include <vector>

namespace bankwright::drawing {

inline constexpr double badge_size = 13.0;
inline constexpr double badge_text = 9.5;

inline void draw_badge(Pen& pen, Point middle, Level level, double size = badge_size) {
    auto const r = size / 2.0;
    if (level == Level::note) {
        pen.circle(middle, r, {ink::note, 1.5, {}, ink::paper});
        pen.line({{middle.x, middle.y - r * 0.1}, {middle.x, middle.y + r * 0.6}}, {ink::note, 1.6});
        pen.line({{middle.x, middle.y - r * 0.6}, {middle.x, middle.y - r * 0.4}}, {ink::note, 1.6});
        return;
    }
    auto const stroke = level == Level::error ? ink::paper : ink::text;
    if (level == Level::error) {
        std::vector<Point> corners;
        auto const c = r * 0.414; // of a regular octagon: tan 22.5 deg
        for (auto const& [x, y] : {Point{-c, -r}, {c, -r}, {r, -c}, {r, c}, {c, r}, {-c, r}, {-r, c}, {-r, -c}})
            corners.push_back({middle.x + x, middle.y + y});
        pen.shape(corners, {ink::text, 0.8, {}, ink::error});
    } else {
        pen.shape({{middle.x, middle.y - r}, {middle.x + r * 1.1, middle.y + r}, {middle.x - r * 1.1, middle.y + r}},
                  {ink::text, 1.0, {}, ink::warning});
    }
    pen.line({{middle.x, middle.y - r * 0.5}, {middle.x, middle.y + r * 0.25}}, {stroke, 1.7});
    pen.line({{middle.x, middle.y + r * 0.5}, {middle.x, middle.y + r * 0.8}}, {stroke, 1.7});
}

inline double badge_width(Mark const& mark) { return badge_size + 4.0 + text_width(mark.words(), badge_text, true); }

// Sign and words, no wider than that, around `middle`.
inline void draw_mark(Pen& pen, Point middle, Mark const& mark, double width) {
    auto const words = fitted(mark.words(), width - badge_size - 4.0, badge_text, true);
    auto const whole = badge_size + 4.0 + text_width(words, badge_text, true);
    auto const left = middle.x - whole / 2.0;
    draw_badge(pen, {left + badge_size / 2.0, middle.y}, mark.level);
    pen.text({left + badge_size + 4.0, middle.y + 3.5}, words, {badge_text, true});
}

} // namespace bankwright::drawing
