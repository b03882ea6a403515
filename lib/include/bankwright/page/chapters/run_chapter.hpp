// How long does it run, and how does each battery's charge go on the way? A curve, and the same in a table.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/chapters/course.hpp"
#include "bankwright/page/html/chart.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/units/print.hpp"

#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {

inline void throttles(Html& html, BankReport const& report) {
    auto const& runs = report.at_throttles;
    if (runs.empty() || !runs.front().ends || runs.front().runtime.value() < 60.0) return;
    CurveChart chart;
    chart.title = "Run time over throttle";
    chart.x_axis = "throttle, %";
    chart.y_axis = "run time, h";
    chart.x_least = runs.front().throttle.in_percent();
    chart.y_most = runs.front().runtime.value() / 3600.0;
    chart.curves.push_back({print(runs.back().runtime), {}, {}});
    std::vector<Row> rows;
    for (auto const& run : runs) {
        chart.curves.front().x.push_back(run.throttle.in_percent());
        chart.curves.front().y.push_back(run.runtime.value() / 3600.0);
        rows.push_back({fmt::format("{:.0f} %", run.throttle.in_percent()), run_words::about(run.runtime)});
    }
    html.element("h3", "With every motor at another throttle");
    html.open("figure", "chart").element("figcaption", chart.title).picture(to_svg(chart)).close();
    html.table("Run time over throttle, in figures", {{"throttle"}, {"runs for", true}}, rows);
}

inline std::string lasting(BankReport const& report) {
    if (report.run->end == RunEnd::time) return "more than " + print(report.run->runtime);
    return run_words::about(report.run->runtime,
                            report.run_range ? std::optional(report.run_range->runtime) : std::nullopt);
}

// A bank that stops within a minute is one that does not run.
inline bool runs_at_all(DischargeResult const& run) { return run.runtime >= 60.0 * si::second; }

inline void run_chapter(Html& html, BankReport const& report) {
    html.folded_chapter("run", "How long it runs");
    if (!report.run) {
        html.paragraph(sentence(report.no_run)).close();
        return;
    }
    auto const& run = *report.run;
    if (run.end == RunEnd::nothing_drawn) {
        html.paragraph("Nothing draws any current.").close();
        return;
    }
    if (!runs_at_all(run)) {
        html.open("p").element("strong", "Not at all").text(": ").prose(run_words::ending(run) + ".").close().close();
        return;
    }
    html.open("p").element("strong", lasting(report)).text(", then: ").prose(run_words::ending(run) + ".").close();
    if (auto const wanted = report.bank.system.runtime)
        html.paragraph("Wanted: " + print(*wanted) + (run.runtime >= *wanted ? ": reached." : ": not reached."));
    auto energy = run_words::energy(run.energy);
    energy.erase(energy.find_last_not_of('\n') + 1);
    html.paragraph(sentence(energy));
    std::vector<std::string> gone;
    for (auto const& one : run.dropped_out)
        gone.push_back(sentence(run_words::drop_out(one) + "."));
    for (auto const& one : run.reversed_cells)
        gone.push_back(sentence(run_words::reversal(one) + "."));
    if (!gone.empty()) html.items(gone);
    charge_course(html, report.bank, run.samples, "Charge of the batteries over time", report.bank.system.runtime);
    throttles(html, report);
    html.close();
}

} // namespace bankwright::page
