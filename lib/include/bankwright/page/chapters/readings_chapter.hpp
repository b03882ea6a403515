// The operating point in tables: what each part carries and what each terminal reads.
#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace bankwright::page {

// A charger with several outputs has no voltage of its own: their terminals are in the last table.
inline std::string voltage_of(Bank const& bank, PartReading const& part) {
    if (!std::isfinite(part.voltage.value())) return "floating";
    bool const several = std::any_of(bank.chargers.begin(), bank.chargers.end(), [&](Charger const& charger) {
        return charger.id == part.id && charger.outputs.value_or(1) > 1;
    });
    return several && part.kind == PartKind::charger ? "see below" : volts(part.voltage);
}

inline void parts_table(Html& html, BankReport const& report, std::string const& caption,
                        std::vector<PartKind> const& kinds, std::string const& voltage) {
    std::vector<std::vector<std::string>> rows;
    for (auto const& part : report.point.parts)
        for (auto const kind : kinds)
            if (part.kind == kind)
                rows.push_back({part.id, amperes(part.current), voltage_of(report.bank, part), watts(part.power)});
    if (rows.empty()) return;
    html.table(caption, {{"part"}, {"current", true}, {voltage, true}, {"power", true}}, rows);
}

inline void readings_chapter(Html& html, BankReport const& report) {
    html.folded_chapter("readings", "What flows, and what a meter reads");
    if (report.point.status != solver::Status::solved) {
        html.paragraph("There is no operating point " + moment_of(report) + ": " +
                       std::string(name(report.point.status)) + ".");
        html.close();
        return;
    }
    html.paragraph(sentence(moment_of(report)) + " A battery's current is positive when it discharges, a conductor's "
                                                 "when it flows from its first end to its second.");
    parts_table(html, report, "Batteries", {PartKind::battery}, "voltage");
    parts_table(html, report, "Motors, loads and chargers", {PartKind::motor, PartKind::load, PartKind::charger},
                "voltage");
    parts_table(html, report, "Jumpers and cables", {PartKind::jumper, PartKind::cable}, "drop");
    parts_table(html, report, "Breakers, fuses, switches, bars and plugs",
                {PartKind::breaker, PartKind::fuse, PartKind::switch_, PartKind::shunt, PartKind::relay,
                 PartKind::selector, PartKind::busbar, PartKind::connector},
                "drop");
    std::vector<std::vector<std::string>> rows;
    for (auto const& terminal : report.point.terminals)
        rows.push_back({terminal.name, terminal.voltage ? volts(*terminal.voltage) : "floating"});
    html.table("Red lead here, black lead on " + report.point.reference, {{"terminal"}, {"reads", true}}, rows);
    html.close();
}

} // namespace bankwright::page
