// Body of to_html.hpp.
#pragma once

#include "bankwright/drawing/svg.hpp"
#include "bankwright/page/chapters/charging_chapter.hpp"
#include "bankwright/page/chapters/cut_chapter.hpp"
#include "bankwright/page/chapters/findings_chapter.hpp"
#include "bankwright/page/chapters/hookup_chapter.hpp"
#include "bankwright/page/chapters/readings_chapter.hpp"
#include "bankwright/page/chapters/run_chapter.hpp"
#include "bankwright/page/chapters/sharing_chapter.hpp"
#include "bankwright/page/chapters/short_circuit_chapter.hpp"
#include "bankwright/page/chapters/sources_chapter.hpp"
#include "bankwright/page/chapters/verdict_chapter.hpp"
#include "bankwright/page/html/head.hpp"
#include "bankwright/page/to_html.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>
#include <utility>

namespace bankwright::page {

namespace internal {

inline std::string title_of(BankReport const& report) {
    return report.bank.name.empty() ? std::string("Battery bank") : report.bank.name;
}

inline bool is_told(BankReport const& report, Chapter chapter) {
    auto const& only = report.options.only;
    if (chapter == Chapter::sharing && report.point.status != solver::Status::solved) return false;
    if (chapter == Chapter::charging && report.bank.chargers.empty()) return false;
    if (only.empty()) return true;
    auto const asked = [&](Chapter one) { return std::find(only.begin(), only.end(), one) != only.end(); };
    // Nobody is shown the steps without the cautions.
    return asked(chapter) || (chapter == Chapter::cautions && asked(Chapter::hookup));
}

inline void contents(Html& html, BankReport const& report) {
    html.open("nav").attribute("aria-label", "On this page").open("ul");
    for (auto const chapter : all_chapters())
        if (is_told(report, chapter))
            html.open("li")
                .open("a")
                .attribute("href", "#" + std::string(name(chapter)))
                .text(heading_of(chapter))
                .close()
                .close();
    html.close().close();
}

inline std::string picture_of(BankReport const& report) {
    drawing::DrawOptions options;
    options.point = report.point;
    options.moment = report.options.moment_in_words;
    options.arrangement = report.verdict.arrangement;
    options.findings = report.verdict.findings;
    options.alone = false;
    return drawing::to_svg(report.bank, options);
}

// On paper it has a sheet of its own, across unless it is tall.
inline void drawing_chapter(Html& html, BankReport const& report) {
    constexpr double tall = 0.75; // height over width
    std::string svg, trouble;
    try {
        svg = picture_of(report);
    } catch (std::length_error const& too_many) {
        trouble = too_many.what();
    }
    bool const is_upright =
        !svg.empty() && std::stod(measure_of(svg, "height")) > tall * std::stod(measure_of(svg, "width"));
    html.chapter("drawing", "How it is wired", is_upright ? "drawing upright" : "drawing");
    if (svg.empty()) {
        html.paragraph(sentence(trouble)).close();
        return;
    }
    html.element("p", "Where the drawing is larger than its frame, it moves within it.", "hint");
    wiring_picture(html, svg);
    html.close();
}

inline void write(Html& html, BankReport const& report, Chapter chapter) {
    switch (chapter) {
    case Chapter::cautions:
        return cautions_chapter(html, report);
    case Chapter::hookup:
        return HookupChapter(html, report).write();
    case Chapter::drawing:
        return drawing_chapter(html, report);
    case Chapter::findings:
        return findings_chapter(html, report);
    case Chapter::readings:
        return readings_chapter(html, report);
    case Chapter::sharing:
        return sharing_chapter(html, report);
    case Chapter::run:
        return run_chapter(html, report);
    case Chapter::charging:
        return charging_chapter(html, report);
    case Chapter::shorts:
        return short_circuit_chapter(html, report);
    case Chapter::cut:
        return cut_chapter(html, report);
    case Chapter::sources:
        return SourcesChapter(html, report).write();
    }
}

} // namespace internal

BANKWRIGHT_INLINE std::string to_html(BankReport const& report) {
    Html html;
    html.open("html").attribute("lang", "en");
    page_head(html, internal::title_of(report) + ": battery bank report");
    html.open("body")
        .open("header")
        .element("h1", internal::title_of(report))
        .element("p", file_name(report.verdict.file), "faint small")
        .close();
    html.open("main");
    verdict_chapter(html, report);
    internal::contents(html, report);
    for (auto const chapter : all_chapters())
        if (internal::is_told(report, chapter)) internal::write(html, report, chapter);
    html.close();
    page_foot(html);
    html.close().close();
    return std::move(html).str();
}

} // namespace bankwright::page
