// One flag, and the label of the box, in millimeters.
#pragma once

#include "bankwright/drawing/text_fit.hpp"
#include "bankwright/reports/labels.hpp"
#include "bankwright/text/xml_writer.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include <fmt/format.h>

namespace bankwright::page::internal {

inline std::string mm(double value) { return fmt::format("{:.4g}", value); }

// As large as asked for, or as fits.
inline double fitting(std::string_view words, double size, double room, bool bold) {
    return std::min(size, room / std::max(drawing::text_width(words, 1.0, bold), 1e-3));
}

inline void write_text(XmlWriter& xml, std::string_view words, double x, double baseline, double size, double room,
                       bool bold = false) {
    if (words.empty()) return;
    xml.open("text").attribute("x", mm(x)).attribute("y", mm(baseline));
    xml.attribute("font-size", mm(fitting(words, size, room, bold)));
    if (bold) xml.attribute("font-weight", "700");
    xml.attribute("fill", "#111").text(words).close();
}

inline void write_rectangle(XmlWriter& xml, double x, double y, double width, double height, std::string_view fill,
                            std::string_view line, double thickness, std::string_view dashes = {}) {
    xml.open("rect")
        .attribute("x", mm(x))
        .attribute("y", mm(y))
        .attribute("width", mm(width))
        .attribute("height", mm(height));
    xml.attribute("fill", fill).attribute("stroke", line).attribute("stroke-width", mm(thickness));
    if (!dashes.empty()) xml.attribute("stroke-dasharray", dashes);
    xml.close();
}

// A square on red with +, a disk on black with -, a triangle on white: each is told from the others without its color.
inline void write_sign(XmlWriter& xml, Side side, double x, double y, double size) {
    auto const middle = 0.5 * size;
    auto const bar = [&](double width, double height) {
        write_rectangle(xml, x + middle - 0.5 * width, y + middle - 0.5 * height, width, height, "#fff", "none", 0.0);
    };
    if (side == Side::positive) {
        write_rectangle(xml, x, y, size, size, "#c00020", "#111", 0.25);
        bar(0.64 * size, 0.16 * size);
        bar(0.16 * size, 0.64 * size);
    } else if (side == Side::negative) {
        xml.open("circle").attribute("cx", mm(x + middle)).attribute("cy", mm(y + middle)).attribute("r", mm(middle));
        xml.attribute("fill", "#111").close();
        bar(0.64 * size, 0.16 * size);
    } else {
        xml.open("path").attribute("d", fmt::format("M {} {} L {} {} L {} {} Z", mm(x + middle), mm(y), mm(x + size),
                                                    mm(y + size), mm(x), mm(y + size)));
        xml.attribute("fill", "#fff").attribute("stroke", "#111").attribute("stroke-width", "0.5").close();
    }
}

inline std::string side_words(EndLabel const& label) {
    if (label.side != Side::between) return word(label.side);
    return fmt::format("{} above minus", print(label.above_negative));
}

// What is read on either face.
inline void write_face(XmlWriter& xml, EndLabel const& label, double x, double y, double width, double height) {
    auto const pad = 0.08 * height;
    auto const sign = height - 2 * pad;
    write_sign(xml, label.side, x + pad, y + pad, std::min(sign, 0.3 * width));
    auto const left = x + 2 * pad + std::min(sign, 0.3 * width);
    auto const room = x + width - left - pad;
    write_text(xml, label.conductor + (label.size.empty() ? "" : "  " + label.size), left, y + 0.32 * height,
               0.27 * height, room, true);
    write_text(xml, label.at + " \u2192 " + label.to, left, y + 0.62 * height, 0.25 * height, room);
    write_text(xml, side_words(label), left, y + 0.9 * height, 0.22 * height, room);
}

// Two faces, and between them what wraps the conductor.
inline void write_flag(XmlWriter& xml, EndLabel const& label, double x, double y, double width, double height) {
    auto const wrap = std::min(16.0, 0.2 * width);
    auto const face = 0.5 * (width - wrap);
    write_rectangle(xml, x, y, width, height, "#fff", "#767676", 0.2);
    write_rectangle(xml, x + face, y, wrap, height, "none", "#767676", 0.15, "1 1");
    write_face(xml, label, x, y, face, height);
    write_face(xml, label, x + face + wrap, y, face, height);
}

inline void write_box(XmlWriter& xml, BoxLabel const& box, double x, double y, double width, double height) {
    constexpr std::array<std::string_view, 4> cautions{
        "Breaker or fuse open, loads and charger off, before any lead is touched.",
        "Negative lead off first, on last. No metal jewelry; cover every other post.",
        "Batteries on charge give off gas that explodes: ventilate, no sparks.",
        "A short here melts tools: use insulated ones only."};
    auto const pad = 0.045 * height;
    auto const room = width - 2 * pad;
    write_rectangle(xml, x, y, width, height, "#fff", "#111", 0.8);
    auto const head =
        (box.system.empty() ? "BATTERY BANK" : box.system) + (box.arrangement.empty() ? "" : "   " + box.arrangement);
    write_text(xml, head, x + pad, y + 0.17 * height, 0.16 * height, room, true);
    write_text(xml, box.name, x + pad, y + 0.26 * height, 0.07 * height, room);
    auto const lines = std::min<std::size_t>(box.lines.size(), 5);
    auto line = y + 0.35 * height;
    for (std::size_t i = 0; i < lines; ++i, line += 0.075 * height) {
        bool const more = i + 1 == lines && box.lines.size() > lines;
        auto const words =
            more ? fmt::format("and {} more lines of breakers and fuses", box.lines.size() - i) : box.lines[i];
        write_text(xml, words, x + pad, line, 0.062 * height, room);
    }
    auto const band = 0.29 * height;
    write_rectangle(xml, x + 0.4, y + height - band - 0.4, width - 0.8, band, "#ffd86b", "none", 0.0);
    line = y + height - band + 0.055 * height;
    auto size = 0.055 * height; // one for all
    for (auto const caution : cautions)
        size = fitting(caution, size, room, true);
    for (auto const caution : cautions) {
        write_text(xml, caution, x + pad, line, size, room, true);
        line += 0.067 * height;
    }
}

} // namespace bankwright::page::internal
