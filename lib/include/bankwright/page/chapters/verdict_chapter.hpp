// The first chapter: may the breaker be closed, what is worst, and the figures that everybody asks for.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/chapters/run_chapter.hpp"
#include "bankwright/page/chapters/signs.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {

inline std::optional<Level> worst_of(Findings const& findings) {
    std::optional<Level> worst;
    for (auto const& finding : findings)
        if (!finding.accepted) worst = std::max(worst.value_or(Level::note), finding.level);
    return worst;
}

inline void verdict_band(Html& html, BankReport const& report) {
    auto const worst = worst_of(report.verdict.findings);
    auto const counts = count(report.verdict.findings);
    bool const bad = worst == Level::error, fair = worst == Level::warning;
    html.open("div", bad ? "verdict error" : fair ? "verdict warning" : "verdict fine");
    html.picture(sign(bad || fair ? worst : std::nullopt)).open("div");
    html.open("h2").attribute("id", "verdict-heading");
    html.text(bad    ? "Stop: " + counted(counts.error, "error")
              : fair ? "No error, " + counted(counts.warning, "warning")
                     : "Nothing wrong found");
    html.close();
    html.paragraph(bad    ? "Do not connect it, do not switch it on. Correct this first."
                   : fair ? "It works as described. Read the warnings before you rely on it."
                          : "The bank as described passes every check. Now see that the boat is wired as described.");
    html.close().close();
}

inline void worst_findings(Html& html, BankReport const& report) {
    constexpr std::size_t most = 3;
    std::vector<std::string> said;
    std::size_t number = 0, left_out = 0;
    auto const worst = worst_of(report.verdict.findings);
    for (auto const& finding : report.verdict.findings) {
        if (finding.accepted) continue;
        ++number;
        if (finding.level != worst || finding.level == Level::note) continue;
        if (said.size() == most)
            ++left_out;
        else
            said.push_back(sentence(finding.message) +
                           (finding.help.empty() ? "" : " What to do: " + finding.help + "."));
    }
    if (said.empty()) return;
    if (left_out > 0) said.push_back(fmt::format("And {} more, below.", left_out));
    html.items(said);
}

inline std::string batteries_in_words(BankReport const& report) {
    auto text = counted(static_cast<int>(report.bank.batteries.size()), "batter");
    text.replace(text.find("batter"), std::string::npos, report.bank.batteries.size() == 1 ? "battery" : "batteries");
    if (report.verdict.arrangement) text += ", " + *report.verdict.arrangement;
    return text;
}

inline std::string run_time(DischargeResult const& run) {
    if (!runs_at_all(run)) return "no time at all";
    return run.end == RunEnd::time ? "more than " + print(run.runtime) : run_words::about(run.runtime);
}

inline void key_figures(Html& html, BankReport const& report) {
    html.open("dl", "figures").fact("Bank", batteries_in_words(report));
    if (report.bank.system.voltage) html.fact("System", print(*report.bank.system.voltage));
    constexpr int most = 4;
    int shown = 0;
    for (auto const& part : report.point.parts) {
        if (part.kind != PartKind::motor && part.kind != PartKind::load) continue;
        if (++shown > most) break;
        html.fact(part.id, std::isfinite(part.voltage.value()) ? amperes(part.current) + " at " + volts(part.voltage)
                                                               : "nothing reaches it");
    }
    if (report.run && report.run->end != RunEnd::nothing_drawn) html.fact("Runs for", run_time(*report.run));
    if (report.shorts && !report.shorts->places.empty()) {
        auto const& places = report.shorts->places;
        auto const hardest =
            std::max_element(places.begin(), places.end(),
                             [](ShortPlace const& a, ShortPlace const& b) { return a.prospective < b.prospective; });
        html.fact("A short can drive", amperes(hardest->prospective) + " at `" + hardest->terminal + "`");
    }
    html.close();
}

inline void verdict_chapter(Html& html, BankReport const& report) {
    html.open("section").attribute("id", "verdict").attribute("aria-labelledby", "verdict-heading");
    verdict_band(html, report);
    worst_findings(html, report);
    key_figures(html, report);
    html.paragraph("Worked out from the file, " + moment_of(report) +
                       (worst_of(report.verdict.findings) == Level::error ? ", faults included." : "."),
                   "faint small");
    if (calls_for_cautions(report.verdict.findings)) {
        html.open("div", "cautions").attribute("id", "cautions").element("h3", "Before you touch the bank");
        html.items(sentences(cautions_for(report.verdict.findings))).close();
    } else {
        html.open("p").text("Before you touch the bank, read the ");
        html.open("a").attribute("href", "#cautions").text("cautions").close().text(".").close();
    }
    html.close();
}

} // namespace bankwright::page
