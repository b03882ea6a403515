// What flows into a short anywhere, what ends it, and what lives through it.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/short_circuit_words.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/units/print.hpp"

#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {

inline void survival(Html& html, ShortCircuitResult const& shorts) {
    std::vector<Row> rows;
    bool any_unended = false, any_doubt = false;
    for (auto const& duty : shorts.conductors) {
        std::string ended = "-", unended = "-";
        if (duty.ended) ended = !duty.ended->survives ? "not sure" : *duty.ended->survives ? "yes" : "no";
        if (duty.unended)
            unended = (duty.unended->bears ? unbroken(seconds(*duty.unended->bears)) : std::string("not known")) +
                      " at `" + duty.unended->at + "`";
        any_doubt = any_doubt || ended == "not sure";
        any_unended = any_unended || duty.unended;
        rows.push_back({duty.id, ended, unended});
    }
    if (rows.empty()) return;
    std::vector<Column> columns{{"conductor"}, {"if it is ended"}};
    if (any_unended)
        columns.push_back({"if nothing ends it, for"});
    else
        for (auto& row : rows)
            row.pop_back();
    html.table("Does the copper survive it?", columns, rows);
    if (any_doubt)
        html.paragraph("Not sure: a breaker as slow as its standard allows would be too slow for that copper; its "
                       "maker's own curve says more.");
    if (any_unended)
        html.paragraph("Ahead of the first breaker or fuse nothing ends a short: after the time given the insulation "
                       "goes, then the copper. That is why such leads are kept short and sheathed.");
}

inline void short_circuit_chapter(Html& html, BankReport const& report) {
    html.folded_chapter("shorts", "If something shorts");
    if (!report.shorts) {
        html.paragraph("Left out for a bank of so many parts; the `short-circuit` command works it out.").close();
        return;
    }
    auto const& shorts = *report.shorts;
    if (shorts.places.empty()) {
        html.paragraph("There is no place where a short would drive a current.").close();
        return;
    }
    html.paragraph(
        "One short at a time, without resistance of its own, every breaker closed, every load and charger off. "
        "Every breaker and fuse is assumed to be as slow as its standard allows.");
    std::vector<std::vector<std::string>> rows;
    for (auto const& place : shorts.places)
        rows.push_back({"`" + place.terminal + "` to `" + place.against + "`", amperes(place.prospective),
                        place.cleared_within ? fmt::format("{} within {}", fmt::join(place.cleared_by, ", "),
                                                           unbroken(seconds(*place.cleared_within)))
                                             : short_circuit_words::ended(place)});
    html.table("What flows into a short, and what ends it", {{"short between"}, {"flows", true}, {"ended by"}}, rows);
    rows.clear();
    for (auto const& device : shorts.devices)
        rows.push_back({device.id, device.at.empty() ? "nothing" : short_circuit_words::needed(device),
                        device.interrupts ? print(*device.interrupts) : "not stated",
                        !device.suffices   ? "not known"
                        : *device.suffices ? "enough"
                                           : "too little"});
    if (!rows.empty())
        html.table("Can the breakers and fuses break it?",
                   {{"device"}, {"must break", true}, {"can break", true}, {"that is"}}, rows);
    survival(html, shorts);
    html.paragraph("Not counted: what inductance holds back, a fuse's arc, and a lithium battery's own disconnect.",
                   "faint small");
    html.close();
}

} // namespace bankwright::page
