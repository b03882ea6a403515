// How long does it run, and how does each battery's charge go on the way? A curve, and the same in a table.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/chart.hpp"
#include "bankwright/page/html.hpp"
#include "bankwright/page/sentences.hpp"
#include "bankwright/reports/battery_table_inl.hpp"
#include "bankwright/reports/discharge_words_inl.hpp"
#include "bankwright/units/print.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string>
#include <vector>

namespace bankwright::page {

// Batteries whose charge goes the same way, to half a percent, are one curve.
struct SameCourse {
    std::size_t first = 0; // battery
    std::vector<std::string> batteries;
};

inline std::vector<SameCourse> courses(Bank const& bank, DischargeResult const& run) {
    std::vector<SameCourse> found;
    for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
        auto const same = std::find_if(found.begin(), found.end(), [&](SameCourse const& course) {
            return std::all_of(run.samples.begin(), run.samples.end(), [&](BatterySample const& sample) {
                return std::abs(sample.charge[b].value() - sample.charge[course.first].value()) < 0.005;
            });
        });
        if (same == found.end())
            found.push_back({b, {bank.batteries[b].id}});
        else
            same->batteries.push_back(bank.batteries[b].id);
    }
    return found;
}

inline CurveChart charge_chart(Bank const& bank, DischargeResult const& run) {
    bool const in_hours = run.runtime.value() > 2.0 * 3600.0;
    auto const unit = in_hours ? 3600.0 : 60.0; // [s]
    CurveChart chart;
    chart.title = "Charge of the batteries over time";
    chart.x_axis = in_hours ? "time, h" : "time, min";
    chart.y_axis = "charge, %";
    constexpr std::size_t most_points = 120, most_curves = 10;
    auto const stride = run.samples.size() / most_points + 1;
    for (auto const& course : courses(bank, run)) {
        if (chart.curves.size() == most_curves) break;
        bool const all = course.batteries.size() == bank.batteries.size() && bank.batteries.size() > 2;
        Curve curve{all ? "all" : fmt::format("{}", fmt::join(course.batteries, " ")), {}, {}};
        for (std::size_t s = 0; s < run.samples.size(); ++s) {
            if (s % stride != 0 && s + 1 != run.samples.size()) continue;
            curve.x.push_back(run.samples[s].time.value() / unit);
            curve.y.push_back(run.samples[s].charge[course.first].in_percent());
        }
        chart.curves.push_back(std::move(curve));
    }
    if (auto const wanted = bank.system.runtime; wanted && wanted->value() < 3.0 * run.runtime.value()) {
        chart.mark = wanted->value() / unit;
        chart.mark_words = "wanted: " + print(*wanted);
    }
    return chart;
}

inline void charge_table(Html& html, Bank const& bank, DischargeResult const& run) {
    std::vector<Column> columns{{"time"}};
    for (auto const& battery : bank.batteries)
        columns.push_back({"`" + battery.id + "`", true});
    std::vector<std::vector<std::string>> rows;
    for (auto const index : battery_rows::chosen(run.samples)) {
        auto const& sample = run.samples[index];
        rows.push_back({unbroken(print(sample.time))});
        for (auto const& charge : sample.charge)
            rows.back().push_back(fmt::format("{:.0f} %", charge.in_percent()));
    }
    html.table("Charge of each battery over time, in figures", columns, rows);
}

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
        rows.push_back({fmt::format("{:.0f} %", run.throttle.in_percent()), print(run.runtime)});
    }
    html.element("h3", "With every motor at another throttle");
    html.open("figure", "chart").element("figcaption", chart.title).picture(to_svg(chart)).close();
    html.table("Run time over throttle, in figures", {{"throttle"}, {"runs for", true}}, rows);
}

// A bank that stops within a minute is one that does not run.
inline bool runs_at_all(DischargeResult const& run) { return run.runtime >= 60.0 * si::second; }

inline void run_chapter(Html& html, BankReport const& report) {
    html.chapter("run", "How long it runs");
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
    html.open("p").element("strong", print(run.runtime)).text(", then: ").prose(run_words::ending(run) + ".").close();
    if (auto const wanted = report.bank.system.runtime)
        html.paragraph("Wanted: " + print(*wanted) + (run.runtime >= *wanted ? ": reached." : ": not reached."));
    auto energy = run_words::energy(run.energy);
    energy.erase(energy.find_last_not_of('\n') + 1);
    html.paragraph(sentence(energy));
    std::vector<std::string> gone;
    for (auto const& one : run.dropped_out)
        gone.push_back(fmt::format("After {} the protective disconnect of `{}` opens.", print(one.time), one.battery));
    for (auto const& one : run.reversed_cells)
        gone.push_back(sentence(run_words::reversal(one) + "."));
    if (!gone.empty()) html.items(gone);
    if (run.samples.size() > 1) {
        html.open("figure", "chart").element("figcaption", "Charge of the batteries over time");
        html.picture(to_svg(charge_chart(report.bank, run))).close();
        charge_table(html, report.bank, run);
    }
    throttles(html, report);
    html.close();
}

} // namespace bankwright::page
