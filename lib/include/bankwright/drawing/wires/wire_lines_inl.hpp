#pragma once

#include "bankwright/drawing/badges.hpp"
#include "bankwright/drawing/layout/measures.hpp"
#include "bankwright/drawing/text_fit.hpp"
#include "bankwright/drawing/wires/wire_lines.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace bankwright::drawing {

namespace internal::label_measures {
inline constexpr double cap = 14.0; // with the sign
inline constexpr double padding = 4.0;
inline constexpr double pitch = 12.0;
inline constexpr double id_size = 10.5;
inline constexpr double text_size = 9.5;
inline constexpr double arrow = 11.0;
inline constexpr double widest = measures::label_width - cap - 2.0 * padding;
} // namespace internal::label_measures

namespace internal {

inline Run const& run_of(Bank const& bank, WirePlace const& wire) {
    return (wire.kind == PartKind::jumper ? bank.jumpers : bank.cables)[wire.index];
}

} // namespace internal

BANKWRIGHT_INLINE LabelText label_text(WirePlace const& wire, PartContext const& context) {
    using namespace internal::label_measures;
    LabelText text;
    text.id = fitted(wire.id, widest, id_size, true);
    text.size = fitted(size_and_length(internal::run_of(context.bank, wire).conductor), widest, text_size);
    if (auto const amperes = context.readings.amperes(wire.id)) {
        text.amperes = fitted(printed_amperes(*amperes), widest - arrow, text_size);
        text.current = std::abs(*amperes) < 1e-6 ? 0.0 : *amperes;
    }
    text.mark = context.marks.of(wire.id);
    auto const mark = text.mark ? std::min(widest, badge_width(*text.mark)) : 0.0;
    auto const lines = 1 + !text.size.empty() + !text.amperes.empty() + (text.mark != nullptr);
    auto const words = std::max({text_width(text.id, id_size, true), text_width(text.size, text_size),
                                 text_width(text.amperes, text_size) + (text.current == 0.0 ? 0.0 : arrow), mark});
    text.measure = {cap + 2.0 * padding + words, pitch * lines + 4.0};
    return text;
}

BANKWRIGHT_INLINE std::string wire_in_words(WirePlace const& wire, PartContext const& context) {
    auto const& run = internal::run_of(context.bank, wire);
    auto text = fmt::format("{} {}: {} to {}", name(wire.kind), wire.id, run.from, run.to);
    if (auto const size = size_and_length(run.conductor); !size.empty()) text += ", " + size;
    if (run.conductor.color) text += ", " + *run.conductor.color;
    if (auto const amperes = context.readings.amperes(wire.id)) {
        text += ", " + printed_amperes(*amperes);
        if (std::abs(*amperes) >= 1e-6) text += " toward " + (*amperes > 0.0 ? run.to : run.from);
    }
    return text;
}

BANKWRIGHT_INLINE std::string_view color_of(WireSide side) {
    return side == WireSide::positive ? ink::positive : side == WireSide::negative ? ink::negative : ink::between;
}

BANKWRIGHT_INLINE void draw_fault_band(Pen& pen, WirePlace const& wire) {
    pen.line(wire.path, {ink::fault, 15.0, "10 5"});
}

BANKWRIGHT_INLINE void draw_wire(Pen& pen, WirePlace const& wire) {
    pen.line(wire.path, {ink::paper, 7.5}); // a gap in what lies under it: lines that cross are not joined
    pen.line(wire.path, {color_of(wire.side), 3.6});
    if (wire.side == WireSide::negative) pen.line(wire.path, {ink::paper, 1.2, "7 5"});
}

BANKWRIGHT_INLINE void draw_side_sign(Pen& pen, Point middle, WireSide side) {
    LineLook const white{ink::paper, 1.8};
    if (side == WireSide::between) { // plus to one battery, minus to the next
        pen.line({{middle.x - 3.5, middle.y + 5.0}, {middle.x + 3.5, middle.y - 5.0}}, white);
        return;
    }
    pen.line({{middle.x - 4.0, middle.y}, {middle.x + 4.0, middle.y}}, white);
    if (side == WireSide::positive) pen.line({{middle.x, middle.y - 4.0}, {middle.x, middle.y + 4.0}}, white);
}

BANKWRIGHT_INLINE void draw_label(Pen& pen, WirePlace const& wire, LabelText const& text, LabelPlace const& place) {
    using namespace internal::label_measures;
    auto const middle = place.box.center();
    Box box = place.box;
    if (place.upright) {
        box = {middle.x - place.box.height / 2.0, middle.y - place.box.width / 2.0, place.box.height, place.box.width};
        pen.xml().open("g").attribute("transform",
                                      fmt::format("rotate(-90 {} {})", coordinate(middle.x), coordinate(middle.y)));
    }
    auto const color = color_of(wire.side);
    pen.box(box, {color, 1.4, {}, ink::paper}, 4.0);
    pen.box({box.x, box.y, cap, box.height}, {{}, 0.0, {}, color}, 4.0);
    draw_side_sign(pen, {box.x + cap / 2.0, middle.y}, wire.side);
    auto const x = box.x + cap + padding;
    auto y = box.y + 11.0;
    auto const say = [&](std::string const& words, TextLook const& look) {
        if (words.empty()) return;
        pen.text({x, y}, words, look);
        y += pitch;
    };
    say(text.id, {.size = id_size, .bold = true});
    say(text.size, {.size = text_size});
    if (!text.amperes.empty()) {
        auto at = x;
        if (text.current != 0.0) {
            auto const along = place.upright ? -place.toward.y : place.toward.x;
            auto const way = along * text.current >= 0.0 ? 1.0 : -1.0;
            Point const tip{x + 4.0 + way * 4.0, y - 3.5};
            pen.shape({tip, {tip.x - way * 8.0, tip.y - 3.5}, {tip.x - way * 8.0, tip.y + 3.5}},
                      {{}, 0.0, {}, ink::text});
            at += arrow;
        }
        pen.text({at, y}, text.amperes, {.size = text_size});
        y += pitch;
    }
    if (text.mark)
        draw_mark(pen, {x + (box.right() - padding - x) / 2.0, y - 3.5}, *text.mark, box.right() - padding - x);
    if (place.upright) pen.xml().close();
}

} // namespace bankwright::drawing
