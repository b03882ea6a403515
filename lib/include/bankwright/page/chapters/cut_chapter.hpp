// What to cut and to buy for the bank as it is described.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/sizing_words.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/sizing/cut_list.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <string>
#include <vector>

namespace bankwright::page {

// "6 AWG red"
inline std::string wire_words(WireSize const& size, std::string const& color) {
    return unbroken(with_unit_signs(print(size))) + (color.empty() ? "" : " " + terminal_safe(color));
}

inline void wire_tables(Html& html, CutList const& list) {
    std::vector<Row> rows;
    for (auto const& total : list.wire)
        rows.push_back({wire_words(total.size, total.color), std::to_string(total.pieces),
                        unbroken(sizing_words::length(total.length, sizing_words::in_feet(list)))});
    if (!rows.empty()) html.table("Wire in all", {{"wire"}, {"pieces", true}, {"in all"}}, rows);
    rows.clear();
    for (auto const& cut : list.cuts)
        rows.push_back({cut.id, wire_words(cut.size, cut.color) + ", `" + cut.from + "` to `" + cut.to + "`",
                        unbroken(sizing_words::length(cut.cut, sizing_words::in_feet(cut.run)))});
    if (!rows.empty()) html.table("Pieces to cut", {{"conductor"}, {"wire, and where it goes"}, {"cut"}}, rows);
    rows.clear();
    for (auto const& end : list.ends)
        rows.push_back(
            {end.what + ", " + unbroken(with_unit_signs(print(end.size))), end.on, std::to_string(end.count)});
    if (!rows.empty()) html.table("Ends to make", {{"end"}, {"on"}, {"count", true}}, rows);
}

inline void parts_to_buy(Html& html, CutList const& list) {
    auto const table = sizing_words::articles(list); // part, count, detail, for
    std::vector<Row> rows;
    for (std::size_t i = 1; i < table.rows.size(); ++i) {
        auto const& row = table.rows[i];
        rows.push_back({row[0], with_unit_signs(row[2]) + (row[3].empty() ? "" : ", for " + row[3]), row[1]});
    }
    if (!rows.empty()) html.table("Parts to buy", {{"part"}, {"what it must be"}, {"count", true}}, rows);
}

inline void cut_chapter(Html& html, BankReport const& report) {
    html.folded_chapter("cut", "What to cut and to buy", wiring_is_wrong(report.verdict) ? "" : "sheet");
    if (wiring_is_wrong(report.verdict)) {
        html.paragraph("Not listed: correct the wiring first.").close();
        return;
    }
    auto const list = cut_list(report.bank);
    if (count(report.verdict.findings).error > 0)
        html.paragraph("As the bank is described, its errors included: buy nothing before they are corrected.");
    wire_tables(html, list);
    parts_to_buy(html, list);
    if (!list.not_cut.empty())
        html.paragraph("No size or no length is stated for " + all_of(list.not_cut) + ": not on the list.");
    html.paragraph(sentence(sizing_words::assumed), "faint small").close();
}

} // namespace bankwright::page
