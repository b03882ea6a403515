#pragma once

#include "bankwright/page/html/head.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/page/label_sheets.hpp"
#include "bankwright/page/labels/flags.hpp"
#include "bankwright/text/xml_writer.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {
namespace internal {

// Where labels go: the box's first, then flags in columns, sheet after sheet.
class SheetLayout {
public:
    SheetLayout(Labels const& labels, Sheet const& sheet)
        : labels_(labels), sheet_(sheet), columns_(std::max(1, fit(width() - 2 * side(), flag_width()))) {}

    int sheets() const {
        int count = 1;
        for (std::size_t i = 0; i < labels_.ends.size(); ++i)
            count = std::max(count, place_of(i).sheet + 1);
        return count;
    }

    // One sheet, its top left corner at the origin.
    void write(XmlWriter& xml, int number) const {
        if (number == 0) write_box(xml, labels_.box, side(), head(), box_width(), box_height());
        for (std::size_t i = 0; i < labels_.ends.size(); ++i)
            if (auto const place = place_of(i); place.sheet == number)
                write_flag(xml, labels_.ends[i], place.x, place.y, flag_width(), flag_height());
    }

    double width() const { return mm(sheet_.width); }
    double height() const { return mm(sheet_.height); }

private:
    struct Place {
        int sheet;
        double x, y;
    };
    static double mm(Length length) { return 1e3 * length.value(); }
    static int fit(double room, double each) { return static_cast<int>((room + gap) / (each + gap)); }
    static constexpr double gap = 3.0; // [mm] between labels, for the scissors

    // As wide as asked for, or what a label leaves of a narrow sheet.
    double side() const { return std::min(mm(sheet_.margin), 0.5 * (width() - flag_width())); }
    double head() const { return std::min(mm(sheet_.margin), 0.5 * (height() - flag_height())); }
    double flag_width() const { return mm(sheet_.flag_width); }
    double flag_height() const { return mm(sheet_.flag_height); }
    double box_width() const { return std::min(width() - 2 * side(), 130.0); }
    double box_height() const { return std::min(height() - 2 * head(), 78.0); }

    int rows_below(double top) const { return std::max(0, fit(height() - head() - top, flag_height())); }
    double first_top() const { return head() + box_height() + 2 * gap; }

    Place place_of(std::size_t label) const {
        auto place = static_cast<int>(label);
        auto const on_first = rows_below(first_top()) * columns_;
        auto const on_others = std::max(1, rows_below(head())) * columns_;
        int sheet = 0;
        double top = first_top();
        if (place >= on_first) {
            place -= on_first;
            sheet = 1 + place / on_others;
            place %= on_others;
            top = head();
        }
        return {sheet, side() + (place % columns_) * (flag_width() + gap),
                top + (place / columns_) * (flag_height() + gap)};
    }

    Labels const& labels_;
    Sheet const& sheet_;
    int columns_;
};

inline void open_svg(XmlWriter& xml, double width, double height) {
    xml.open("svg").attribute("xmlns", "http://www.w3.org/2000/svg");
    xml.attribute("width", fmt::format("{:.6g}mm", width)).attribute("height", fmt::format("{:.6g}mm", height));
    xml.attribute("viewBox", fmt::format("0 0 {:.6g} {:.6g}", width, height));
    xml.attribute("font-family", "Helvetica, Arial, sans-serif").attribute("role", "img");
}

inline std::string how_to_fold() {
    return "Print at 100 %. Cut along the lines, put the strip in the middle around the conductor near its terminal, "
           "and stick "
           "the two faces together.";
}

} // namespace internal

BANKWRIGHT_INLINE std::string sheet_problem(Sheet const& sheet) {
    auto const is_sound = [](Length length, double least, double most) {
        return length.value() >= least && length.value() <= most;
    };
    if (!is_sound(sheet.width, 0.02, 2.0) || !is_sound(sheet.height, 0.02, 2.0))
        return "a sheet is 20 mm to 2 m wide and high";
    if (!is_sound(sheet.flag_width, 0.03, 0.3) || !is_sound(sheet.flag_height, 0.006, 0.1))
        return "a label is 30 to 300 mm wide and 6 to 100 mm high";
    if (!(sheet.margin.value() >= 0.0) || sheet.flag_width > sheet.width || sheet.flag_height > sheet.height)
        return "no label fits on the sheet";
    return {};
}

BANKWRIGHT_INLINE std::string labels_svg(Labels const& labels, Sheet const& sheet) {
    if (auto const problem = sheet_problem(sheet); !problem.empty()) throw std::invalid_argument(problem);
    internal::SheetLayout const layout(labels, sheet);
    auto const sheets = layout.sheets();
    XmlWriter xml;
    internal::open_svg(xml, layout.width(), layout.height() * sheets);
    xml.open("title").text("Labels: " + file_name(labels.file)).close();
    for (int s = 0; s < sheets; ++s) {
        xml.open("g").attribute("transform", fmt::format("translate(0 {:.6g})", layout.height() * s));
        layout.write(xml, s);
        xml.close();
    }
    xml.close();
    return std::move(xml).str();
}

BANKWRIGHT_INLINE std::string labels_html(Labels const& labels, Sheet const& sheet) {
    if (auto const problem = sheet_problem(sheet); !problem.empty()) throw std::invalid_argument(problem);
    internal::SheetLayout const layout(labels, sheet);
    Html html;
    html.open("html").attribute("lang", "en");
    page_head(
        html, "Labels: " + file_name(labels.file),
        fmt::format(
            "@page {{ size: {:.6g}mm {:.6g}mm; margin: 0; }}\n"
            ".sheet svg {{ display: block; }}\n"
            "@media screen {{ .sheet {{ border: 1px solid #767676; margin: 1rem 0; width: max-content; }} "
            "main {{ overflow-x: auto; }} }}\n"
            "@media print {{ header, main {{ max-width: none; margin: 0; padding: 0; }} "
            "header {{ display: none; }} .sheet {{ break-after: page; }} .sheet:last-child {{ break-after: auto; }} }}",
            layout.width(), layout.height()));
    html.open("body").open("header").element("h1", "Labels: " + file_name(labels.file));
    html.paragraph(internal::how_to_fold()).close().open("main");
    for (int s = 0; s < layout.sheets(); ++s) {
        XmlWriter xml;
        internal::open_svg(xml, layout.width(), layout.height());
        xml.attribute("aria-label", fmt::format("sheet {}", s + 1));
        layout.write(xml, s);
        xml.close();
        html.open("div", "sheet").picture(std::move(xml).str()).close();
    }
    html.close().close().close();
    return std::move(html).str();
}

} // namespace bankwright::page
