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

#include <array>
#include <stdexcept>
#include <string>
#include <utility>

namespace bankwright::page {

namespace internal {

inline std::string title_of(BankReport const& report) {
    return report.bank.name.empty() ? std::string("Battery bank") : report.bank.name;
}

inline void contents(Html& html, BankReport const& report) {
    html.open("nav").attribute("aria-label", "On this page").open("ul");
    std::vector<std::pair<char const*, char const*>> chapters{
        {"drawing", "Drawing"}, {"findings", "Findings"}, {"readings", "Readings"}};
    if (report.point.status == solver::Status::solved) chapters.emplace_back("sharing", "Sharing");
    chapters.emplace_back("run", "Run time");
    if (!report.bank.chargers.empty()) chapters.emplace_back("charging", "Charging");
    for (auto const& more : {std::pair{"shorts", "Shorts"},
                             {"cautions", "Cautions"},
                             {"hookup", "Hook-up"},
                             {"cut", "Cut list"},
                             {"sources", "Sources"}})
        chapters.emplace_back(more);
    for (auto const& [id, words] : chapters)
        html.open("li").open("a").attribute("href", std::string("#") + id).text(words).close().close();
    html.close().close();
}

inline void drawing_chapter(Html& html, BankReport const& report) {
    html.open("section", "drawing").attribute("id", "drawing").attribute("aria-labelledby", "drawing-heading");
    html.open("h2").attribute("id", "drawing-heading").text("How it is wired").close();
    drawing::DrawOptions options;
    options.point = report.point;
    options.moment = report.options.moment_in_words;
    options.arrangement = report.verdict.arrangement;
    options.findings = report.verdict.findings;
    options.alone = false;
    try {
        auto const svg = drawing::to_svg(report.bank, options);
        html.element("p", "Where the drawing is wider than the screen, it moves sideways.", "hint");
        wiring_picture(html, svg);
    } catch (std::length_error const& too_many) {
        html.paragraph(sentence(too_many.what()));
    }
    html.close();
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
    internal::drawing_chapter(html, report);
    findings_chapter(html, report);
    readings_chapter(html, report);
    sharing_chapter(html, report);
    run_chapter(html, report);
    charging_chapter(html, report);
    short_circuit_chapter(html, report);
    cautions_chapter(html, report);
    HookupChapter(html, report).write();
    cut_chapter(html, report);
    SourcesChapter(html, report).write();
    html.close();
    page_foot(html);
    html.close().close();
    return std::move(html).str();
}

} // namespace bankwright::page
