// What flows into a short anywhere, what ends it, and what lives through it.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html.hpp"
#include "bankwright/page/sentences.hpp"
#include "bankwright/reports/short_circuit_words.hpp"
#include "bankwright/units/print.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace bankwright::page {

inline std::string lives_through(ConductorDuty const& duty) {
    std::string text;
    if (duty.ended) text = !duty.ended->survives ? "not sure" : *duty.ended->survives ? "yes, until it is ended" : "no";
    if (duty.unended)
        text += std::string(text.empty() ? "" : "; ") + "nothing ends one at `" + duty.unended->at +
                "`: bears it for " +
                (duty.unended->bears ? seconds(*duty.unended->bears) : std::string("a time not known"));
    return text.empty() ? "no fault current" : text;
}

inline void short_circuit_chapter(Html& html, BankReport const& report) {
    html.chapter("shorts", "If something shorts");
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
        "Every breaker and fuse is taken to be as slow as its standard lets it be.");
    std::vector<std::vector<std::string>> rows;
    for (auto const& place : shorts.places)
        rows.push_back({"`" + place.terminal + "` to `" + place.against + "`", amperes(place.prospective),
                        place.cleared_within ? fmt::format("{} within {}", fmt::join(place.cleared_by, ", "),
                                                           seconds(*place.cleared_within))
                                             : short_circuit_words::ended(place)});
    html.table("What flows into a short, and what ends it", {{"short between"}, {"flows", true}, {"ended by"}}, rows);
    rows.clear();
    for (auto const& device : shorts.devices)
        rows.push_back({device.id, device.at.empty() ? "nothing" : amperes(device.most),
                        device.interrupts ? print(*device.interrupts) : "not stated",
                        !device.suffices   ? "not known"
                        : *device.suffices ? "enough"
                                           : "too little"});
    if (!rows.empty())
        html.table("Can the breakers and fuses break it?",
                   {{"device"}, {"must break", true}, {"can break", true}, {"that is"}}, rows);
    rows.clear();
    for (auto const& one : shorts.conductors)
        rows.push_back({one.id, lives_through(one)});
    if (!rows.empty()) html.table("Does the copper live through it?", {{"conductor"}, {"survives"}}, rows);
    html.paragraph("Not counted: what inductance holds back, a fuse's arc, and a lithium battery's own disconnect.",
                   "faint small");
    html.close();
}

} // namespace bankwright::page
