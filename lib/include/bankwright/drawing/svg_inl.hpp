#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/drawing/layout/lay_out.hpp"
#include "bankwright/drawing/layout/measures.hpp"
#include "bankwright/drawing/svg.hpp"
#include "bankwright/drawing/symbols/notes.hpp"
#include "bankwright/drawing/text_fit.hpp"
#include "bankwright/drawing/wires/wire_lines.hpp"
#include "bankwright/text/quoted_names.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::drawing {

namespace internal {

class SvgWriter {
public:
    SvgWriter(Bank const& bank, DrawOptions const& options)
        : bank_(bank), options_(options), drawing_(lay_out(bank)), readings_(options.point),
          marks_(marks_of(options.findings)), context_{bank_, readings_, marks_, drawing_},
          width_(std::max(drawing_.width, 680.0)) {}

    std::string write() {
        for (auto const& wire : drawing_.wires)
            texts_.push_back(label_text(wire, context_));
        std::vector<LabelSize> sizes;
        for (auto const& text : texts_)
            sizes.push_back(text.measure);
        labels_ = place_labels(drawing_, sizes);

        // The notes come last and tell how long the page is, which its first line must say.
        Pen pen(options_.prefix);
        body(pen);
        Notes notes{drawing_.height + 34.0, width_, options_.alone, {}};
        for (std::size_t w = 0; w < labels_.size(); ++w)
            if (!labels_[w]) notes.unlabeled.push_back(wire_in_words(drawing_.wires[w], context_));
        pen.open_group("notes", "Notes");
        auto const height = draw_notes(pen, notes, context_) + 8.0;
        pen.close();

        XmlWriter page;
        auto const size = fmt::format("0 0 {} {}", coordinate(width_), coordinate(height));
        page.open("svg").attribute("xmlns", "http://www.w3.org/2000/svg").attribute("viewBox", size);
        page.attribute("width", coordinate(width_)).attribute("height", coordinate(height));
        page.attribute("role", "img").attribute("class", pen.named("drawing"));
        page.attribute("aria-labelledby", pen.named("title") + " " + pen.named("desc"));
        page.attribute("font-family", typeface);
        page.open("title").attribute("id", pen.named("title")).text(title()).close();
        page.open("desc").attribute("id", pen.named("desc")).text(description()).close();
        page.open("rect").attribute("width", "100%").attribute("height", "100%").attribute("fill", ink::paper).close();
        auto text = std::move(page).str();
        auto const end = text.rfind("</svg>");
        return text.substr(0, end) + std::move(pen.xml()).str() + "</svg>\n";
    }

private:
    std::string title() const {
        return "Wiring diagram of " + (bank_.name.empty() ? std::string("a battery bank") : bank_.name);
    }

    std::string moment() const {
        if (!options_.point) return "wiring only";
        if (!readings_.any()) return "no operating point: wiring only";
        auto const what =
            options_.moment.empty() ? std::string("with every load as the file describes it") : options_.moment;
        return fmt::format("readings {}, volts against {}", what, options_.point->reference);
    }

    // For those who cannot see it.
    std::string description() const {
        auto text =
            fmt::format("{} {}{}; {}.", bank_.batteries.size(), bank_.batteries.size() == 1 ? "battery" : "batteries",
                        options_.arrangement ? " in " + *options_.arrangement : "", moment());
        for (auto const& wire : drawing_.wires)
            text += "\n" + wire_in_words(wire, context_) + ".";
        for (std::size_t i = 0; i < marks_.listed.size(); ++i)
            text += fmt::format("\n{} {}: {}.", name(marks_.listed[i]->level), i + 1,
                                without_quotes(marks_.listed[i]->message));
        return text;
    }

    void body(Pen& pen) {
        auto const room = width_ - 2.0 * measures::margin;
        pen.text({measures::margin, 27.0}, fitted(bank_.name.empty() ? "Battery bank" : bank_.name, room, 17.0, true),
                 {.size = 17.0, .bold = true});
        std::string line = options_.arrangement.value_or("");
        if (bank_.system.voltage) line += (line.empty() ? "" : ", ") + print(*bank_.system.voltage) + " system";
        line += (line.empty() ? "" : "; ") + moment();
        pen.text({measures::margin, 44.0}, fitted(line, room, 11.0), {.size = 11.0, .fill = ink::faint});
        if (drawing_.batteries) {
            pen.box(*drawing_.batteries, {{}, 0.0, {}, ink::ground}, 10.0);
            pen.text({drawing_.batteries->x + 8.0, drawing_.batteries->bottom() + 14.0}, "batteries, seen from above",
                     {.size = 9.5, .fill = ink::faint});
        }
        for (auto const& wire : drawing_.wires)
            if (wire.in_fault_loop) draw_fault_band(pen, wire);
        for (auto const& part : drawing_.parts)
            draw_part_ground(pen, part);
        for (auto const& wire : drawing_.wires) {
            pen.open_group("wire", wire_in_words(wire, context_));
            draw_wire(pen, wire);
            pen.close();
        }
        for (auto const& part : drawing_.parts) {
            pen.open_group(name(part.kind), fmt::format("{} {}", name(part.kind), part.id));
            draw_part(pen, part, context_);
            pen.close();
        }
        for (std::size_t w = 0; w < labels_.size(); ++w) {
            if (!labels_[w]) continue;
            pen.open_group("label", wire_in_words(drawing_.wires[w], context_));
            draw_label(pen, drawing_.wires[w], texts_[w], *labels_[w]);
            pen.close();
        }
    }

    Bank const& bank_;
    DrawOptions const& options_;
    Drawing drawing_;
    Readings readings_;
    Marks marks_;
    PartContext context_;
    double width_;
    std::vector<LabelText> texts_;
    std::vector<std::optional<LabelPlace>> labels_;
};

// A device that sits straight on a post is drawn beside it, joined by a line that says so.
inline Bank with_seats_as_cables(Bank bank) {
    for (auto const& [line, post] : seats(bank)) {
        Run seat;
        seat.conductor.id = "on " + post;
        seat.from = post;
        seat.to = line;
        bank.cables.push_back(std::move(seat));
    }
    for (auto* devices : {&bank.breakers, &bank.fuses})
        for (auto& device : *devices)
            device.on.reset();
    return bank;
}

} // namespace internal

BANKWRIGHT_INLINE std::string to_svg(Bank const& bank, DrawOptions const& options) {
    std::size_t parts = 0;
    for_each_part(bank, [&](PartKind, auto const&) { ++parts; });
    if (parts > most_parts)
        throw std::length_error(fmt::format("{} parts are too many to draw; at most {} are drawn", parts, most_parts));
    auto const drawn = internal::with_seats_as_cables(bank);
    return internal::SvgWriter(drawn, options).write();
}

} // namespace bankwright::drawing
