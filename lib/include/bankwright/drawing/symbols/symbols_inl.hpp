#pragma once

#include "bankwright/drawing/symbols/symbols.hpp"

#include <fmt/format.h>

namespace bankwright::drawing::symbols {

namespace internal {

inline Point between(Point a, Point b) { return {(a.x + b.x) / 2.0, a.y}; }
inline LineLook outline(double width) { return {ink::outline, width, {}, ink::paper}; }

} // namespace internal

BANKWRIGHT_INLINE void polarity(Pen& pen, Point middle, bool plus, double reach) {
    LineLook const white{ink::paper, 2.2};
    pen.line({{middle.x - reach, middle.y}, {middle.x + reach, middle.y}}, white);
    if (plus) pen.line({{middle.x, middle.y - reach}, {middle.x, middle.y + reach}}, white);
}

BANKWRIGHT_INLINE void cell(Pen& pen, Point middle, bool turned) {
    auto const [x, y] = middle;
    auto const way = turned ? -1.0 : 1.0;
    LineLook const thin{ink::faint, 1.2};
    pen.line({{x - 20.0, y}, {x - 3.0, y}}, thin);
    pen.line({{x + 3.0, y}, {x + 20.0, y}}, thin);
    pen.line({{x + way * 3.0, y - 9.0}, {x + way * 3.0, y + 9.0}}, thin);
    pen.line({{x - way * 3.0, y - 4.5}, {x - way * 3.0, y + 4.5}}, {ink::faint, 3.0});
}

BANKWRIGHT_INLINE void fuse(Pen& pen, Point left, Point right, bool whole) {
    auto const [x, y] = internal::between(left, right);
    pen.box({x - 18.0, y - 7.0, 36.0, 14.0}, internal::outline(1.8));
    pen.line({left, {whole ? x : x - 6.0, y}}, {});
    pen.line({{whole ? x : x + 6.0, y}, right}, {});
}

namespace internal {

// Lead, blade and fixed contact, which stands 17 px right of the middle.
inline Point blade(Pen& pen, Point left, Point right, bool closed) {
    auto const middle = between(left, right);
    Point const pivot{middle.x - 17.0, middle.y}, fixed{middle.x + 17.0, middle.y};
    pen.line({left, pivot}, {});
    pen.line({fixed, right}, {});
    pen.line({pivot, closed ? Point{fixed.x, fixed.y - 1.5} : Point{fixed.x - 4.0, fixed.y - 14.0}}, outline(2.2));
    pen.circle(pivot, 2.6, outline(1.5));
    return fixed;
}

} // namespace internal

BANKWRIGHT_INLINE void breaker(Pen& pen, Point left, Point right, bool closed) {
    auto const [x, y] = internal::blade(pen, left, right, closed);
    pen.line({{x - 4.0, y - 4.0}, {x + 4.0, y + 4.0}}, {ink::outline, 1.8});
    pen.line({{x - 4.0, y + 4.0}, {x + 4.0, y - 4.0}}, {ink::outline, 1.8});
}

BANKWRIGHT_INLINE void disconnector(Pen& pen, Point left, Point right, bool closed) {
    pen.circle(internal::blade(pen, left, right, closed), 2.6, internal::outline(1.5));
}

BANKWRIGHT_INLINE void socket_and_plug(Pen& pen, Point left, Point right, bool turned, bool mated) {
    auto const [x, y] = internal::between(left, right);
    auto const gap = mated ? 0.0 : 7.0;
    auto const way = turned ? -1.0 : 1.0; // from the cup of the socket to the pin of the plug
    auto const cup = x - way * (4.0 + gap), pin = x - way * (1.0 - gap);
    auto const socket_end = cup - way * 7.0, pin_end = pin + way * 12.0;
    pen.path(fmt::format("M{} {}a7 7 0 0 {} 0 14", coordinate(cup), coordinate(y - 7.0), turned ? 1 : 0),
             {ink::outline, 1.8});
    pen.line({{pin, y}, {pin_end, y}}, {ink::outline, 5.0});
    auto const bend = x + 24.0; // where the right terminal lies lower than the left one
    pen.line({left, {turned ? pin_end : socket_end, y}}, {});
    pen.line({{turned ? socket_end : pin_end, y}, {bend, y}, {bend, right.y}, right}, {});
}

BANKWRIGHT_INLINE void motor(Pen& pen, Point middle) {
    pen.circle(middle, 19.0, internal::outline(1.8));
    pen.text({middle.x, middle.y + 3.0}, "M", {.size = 15.0, .bold = true, .anchor = Anchor::middle});
    pen.line({{middle.x - 7.0, middle.y + 8.0}, {middle.x + 7.0, middle.y + 8.0}}, {ink::outline, 1.4});
}

BANKWRIGHT_INLINE void resistor(Pen& pen, Point middle) {
    pen.box({middle.x - 8.0, middle.y - 18.0, 16.0, 36.0}, internal::outline(1.8));
}

BANKWRIGHT_INLINE void rectifier(Pen& pen, Point middle) {
    Box const square{middle.x - 18.0, middle.y - 18.0, 36.0, 36.0};
    pen.box(square, internal::outline(1.8));
    pen.line({{square.x, square.bottom()}, {square.right(), square.y}}, {ink::outline, 1.2});
    pen.path(fmt::format("M{} {}q3 -6 6 0t6 0", coordinate(square.x + 4.0), coordinate(square.y + 11.0)),
             {ink::outline, 1.4});
    pen.line({{middle.x + 4.0, middle.y + 9.0}, {middle.x + 14.0, middle.y + 9.0}}, {ink::outline, 1.4});
    pen.line({{middle.x + 4.0, middle.y + 13.0}, {middle.x + 14.0, middle.y + 13.0}}, {ink::outline, 1.4, "3 2"});
}

} // namespace bankwright::drawing::symbols
