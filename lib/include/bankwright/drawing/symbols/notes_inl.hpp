#pragma once

#include "bankwright/drawing/badges.hpp"
#include "bankwright/drawing/layout/measures.hpp"
#include "bankwright/drawing/symbols/notes.hpp"
#include "bankwright/drawing/text_fit.hpp"
#include "bankwright/drawing/wires/wire_lines.hpp"
#include "bankwright/text/quoted_names.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace bankwright::drawing {

namespace internal {

class NotesPen {
public:
    NotesPen(Pen& pen, Notes const& notes, PartContext const& context)
        : pen_(pen), notes_(notes), context_(context), y_(notes.top), right_(notes.width - measures::margin) {}

    double draw() {
        legend();
        if (notes_.alone) findings();
        leftovers();
        if (notes_.alone) caution();
        return y_;
    }

private:
    static constexpr double size = 11.0;
    static constexpr double pitch = 15.0;
    static constexpr std::size_t most_findings = 40;
    static constexpr std::size_t most_leftovers = 40;

    void paragraph(double indent, std::string_view words, TextLook const& look) {
        auto const left = measures::margin + indent;
        for (auto const& line : wrapped(words, right_ - left, look.size, look.bold)) {
            pen_.text({left, y_}, line, look);
            y_ += pitch;
        }
    }

    // --- what the signs mean -----------------------------------------------------------------------------------------
    // Makes room for one entry of the legend and returns where its sign stands.
    Point entry(double sign_width, std::string_view words) {
        auto const width = sign_width + 6.0 + text_width(words, 10.0) + 18.0;
        if (x_ > measures::margin && x_ + width > right_) {
            x_ = measures::margin;
            y_ += 20.0;
        }
        Point const at{x_, y_};
        pen_.text({x_ + sign_width + 6.0, y_ + 3.5}, words, {.size = 10.0});
        x_ += width;
        return at;
    }
    void legend() {
        x_ = measures::margin;
        for (auto const side : {WireSide::positive, WireSide::negative, WireSide::between}) {
            auto const& wires = context_.drawing.wires;
            if (std::none_of(wires.begin(), wires.end(), [&](auto const& w) { return w.side == side; })) continue;
            auto const words = side == WireSide::positive   ? "positive"
                               : side == WireSide::negative ? "negative"
                                                            : "between batteries: + of one, - of the next";
            auto const at = entry(44.0, words);
            WirePlace sample;
            sample.side = side;
            sample.path = {{at.x, at.y}, {at.x + 44.0, at.y}};
            draw_wire(pen_, sample);
            pen_.box({at.x + 15.0, at.y - 7.0, 14.0, 14.0}, {{}, 0.0, {}, color_of(side)}, 3.0);
            draw_side_sign(pen_, {at.x + 22.0, at.y}, side);
        }
        if (context_.readings.any()) {
            auto const at = entry(9.0, "current flows this way");
            pen_.shape({{at.x + 8.0, at.y}, {at.x, at.y - 3.5}, {at.x, at.y + 3.5}}, {{}, 0.0, {}, ink::text});
        }
        auto const& parts = context_.drawing.parts;
        if (std::any_of(parts.begin(), parts.end(), [](auto const& p) { return p.in_fault_loop; })) {
            auto const at = entry(44.0, "fault loop: it drives a current that no load limits");
            pen_.line({{at.x, at.y}, {at.x + 44.0, at.y}}, {ink::fault, 15.0, "10 5"});
        }
        y_ += 30.0;
    }

    // --- findings ----------------------------------------------------------------------------------------------------
    void findings() {
        auto const& listed = context_.marks.listed;
        for (std::size_t i = 0; i < std::min(listed.size(), most_findings); ++i) {
            auto const& finding = *listed[i];
            draw_badge(pen_, {measures::margin + 8.0, y_ - 4.0}, finding.level, 15.0);
            auto const words = fmt::format("{} {}", name(finding.level), i + 1);
            pen_.text({measures::margin + 22.0, y_}, words, {.size = size, .bold = true});
            auto const indent = 92.0;
            paragraph(indent, fmt::format("{} [{}]", without_quotes(finding.message), finding.rule), {.size = size});
            if (!finding.help.empty())
                paragraph(indent, "what to do: " + without_quotes(finding.help), {.size = size, .fill = ink::faint});
            y_ += 4.0;
        }
        if (listed.size() > most_findings)
            paragraph(0.0, fmt::format("and {} more", listed.size() - most_findings), {.size = size, .bold = true});
    }

    void leftovers() {
        auto const list = [&](std::string_view title, std::vector<std::string> const& entries) {
            if (entries.empty()) return;
            paragraph(0.0, title, {.size = size, .bold = true});
            for (std::size_t i = 0; i < std::min(entries.size(), most_leftovers); ++i)
                paragraph(10.0, fitted(entries[i], right_ - measures::margin - 10.0, size), {.size = size});
            if (entries.size() > most_leftovers)
                paragraph(10.0, fmt::format("and {} more", entries.size() - most_leftovers), {.size = size});
            y_ += 4.0;
        };
        list("No room for these labels:", notes_.unlabeled);
        list("Not drawn, since an end is on no terminal of this bank:", context_.drawing.undrawn);
    }

    void caution() {
        paragraph(
            0.0,
            "Before you touch the bank: disconnect first, wear eye protection and no metal jewelry, cover every post "
            "that you are not working on, ventilate. Local codes, the makers' instructions and a licensed or certified "
            "electrician decide.",
            {.size = 10.0, .fill = ink::faint});
    }

    Pen& pen_;
    Notes const& notes_;
    PartContext const& context_;
    double x_ = 0.0;
    double y_;
    double right_;
};

} // namespace internal

BANKWRIGHT_INLINE double draw_notes(Pen& pen, Notes const& notes, PartContext const& context) {
    return internal::NotesPen(pen, notes, context).draw();
}

} // namespace bankwright::drawing
