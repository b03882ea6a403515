#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/drawing/svg.hpp"
#include "bankwright/page/comparison_page.hpp"
#include "bankwright/page/html/head.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/compare_words.hpp"

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace bankwright::page {
namespace internal {

inline void comparison_table(Html& html, std::vector<BankFigures> const& figures, bool differs) {
    std::vector<Column> columns{{""}};
    for (auto const& bank : figures)
        columns.push_back({file_name(bank.name)});
    std::vector<std::vector<std::string>> rows;
    for (auto const& row : compared_rows(figures)) {
        if (row.differs != differs) continue;
        rows.push_back({row.what});
        for (auto const& value : row.values)
            rows.back().push_back(with_unit_signs(value));
    }
    if (rows.empty()) return;
    html.table(differs ? "What differs" : "What is the same", columns, rows);
}

inline void comparison_picture(Html& html, BankFigures const& figures, Bank const& bank, std::size_t place) {
    html.open("section", "drawing").element("h2", file_name(figures.name));
    drawing::DrawOptions options;
    options.point = operating_point(bank);
    options.arrangement = figures.arrangement;
    options.findings = figures.findings;
    options.alone = false;
    options.prefix = "bank" + std::to_string(place + 1);
    try {
        wiring_picture(html, drawing::to_svg(bank, options));
    } catch (std::length_error const& too_many) {
        html.paragraph(sentence(too_many.what()));
    }
    html.close();
}

} // namespace internal

BANKWRIGHT_INLINE std::string comparison_to_html(std::vector<BankFigures> const& figures,
                                                 std::vector<Bank> const& banks) {
    if (figures.size() != banks.size()) throw std::invalid_argument("each bank needs its figures");
    Html html;
    html.open("html").attribute("lang", "en");
    page_head(html, "Banks side by side");
    html.open("body").open("header").element("h1", "Banks side by side").close().open("main");
    html.chapter("rows", "Side by side");
    internal::comparison_table(html, figures, true);
    internal::comparison_table(html, figures, false);
    html.close();
    for (std::size_t i = 0; i < banks.size(); ++i)
        internal::comparison_picture(html, figures[i], banks[i], i);
    html.close();
    page_foot(html);
    html.close().close();
    return std::move(html).str();
}

} // namespace bankwright::page
