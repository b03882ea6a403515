// What to cut and to buy for the bank as it is described.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html.hpp"
#include "bankwright/page/sentences.hpp"
#include "bankwright/reports/sizing_words_inl.hpp"
#include "bankwright/sizing/cut_list.hpp"

#include <string>
#include <vector>

namespace bankwright::page {

inline std::string caption_of(std::string const& title) {
    if (title == "conductor") return "Wire in all";
    if (title == "cut") return "Pieces to cut";
    if (title == "ends") return "Ends to make";
    return "Parts to buy";
}

inline void cut_chapter(Html& html, BankReport const& report) {
    html.chapter("cut", "What to cut and to buy");
    if (wiring_is_wrong(report.verdict)) {
        html.paragraph("Not listed: the wiring has to be put right first.").close();
        return;
    }
    auto const list = cut_list(report.bank);
    for (auto const& table : sizing_words::cut_tables(list)) {
        std::vector<Column> columns;
        for (std::size_t i = 0; i < table.aligned.size(); ++i)
            columns.push_back({table.rows.front()[i], table.aligned[i] == Align::right});
        std::vector<Row> rows(table.rows.begin() + 1, table.rows.end());
        for (auto& row : rows)
            for (auto& cell : row)
                cell = with_unit_signs(cell);
        html.table(caption_of(table.title), columns, rows);
    }
    if (!list.not_cut.empty())
        html.paragraph("No size or no length is stated of " + all_of(list.not_cut) + ": not on the list.");
    html.paragraph(sentence(sizing_words::assumed), "faint small").close();
}

} // namespace bankwright::page
