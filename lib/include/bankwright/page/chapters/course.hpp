// How the batteries' charge goes over time, in a run or on charge: a curve, and the same in a table.
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/page/html/chart.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {

// Batteries whose charge goes the same way, to half a percent, are one curve and one column.
struct SameCourse {
    std::size_t first = 0; // battery
    std::vector<std::string> batteries;

    std::string words(Bank const& bank, char const* all) const {
        return batteries.size() == bank.batteries.size() && batteries.size() > 2
                   ? std::string(all)
                   : fmt::format("{}", fmt::join(batteries, " "));
    }
};

inline std::vector<SameCourse> courses(Bank const& bank, std::vector<BatterySample> const& samples) {
    std::vector<SameCourse> found;
    for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
        auto const same = std::find_if(found.begin(), found.end(), [&](SameCourse const& course) {
            return std::all_of(samples.begin(), samples.end(), [&](BatterySample const& sample) {
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

inline CurveChart charge_chart(Bank const& bank, std::vector<BatterySample> const& samples, std::string const& title,
                               std::optional<Duration> wanted) {
    auto const end = samples.back().time.value();
    bool const in_hours = end > 2.0 * 3600.0;
    auto const unit = in_hours ? 3600.0 : 60.0; // [s]
    CurveChart chart;
    chart.title = title;
    chart.x_axis = in_hours ? "time, h" : "time, min";
    chart.y_axis = "charge, %";
    constexpr std::size_t most_points = 120, most_curves = 10;
    auto const stride = samples.size() / most_points + 1;
    for (auto const& course : courses(bank, samples)) {
        if (chart.curves.size() == most_curves) break;
        Curve curve{course.words(bank, "all"), {}, {}};
        for (std::size_t s = 0; s < samples.size(); ++s) {
            if (s % stride != 0 && s + 1 != samples.size()) continue;
            curve.x.push_back(samples[s].time.value() / unit);
            curve.y.push_back(samples[s].charge[course.first].in_percent());
        }
        chart.curves.push_back(std::move(curve));
    }
    if (wanted && wanted->value() < 3.0 * end) {
        chart.mark = wanted->value() / unit;
        chart.mark_words = "wanted: " + print(*wanted);
    }
    return chart;
}

// 0, ..., end [s], a round time apart, about a dozen of them. The last step may be a longer one, so that it is none of
// a few seconds.
inline std::vector<double> round_times(double end) {
    constexpr std::array steps{5.0,    10.0,   20.0,   30.0,    60.0,    120.0,   300.0,   600.0,   900.0,
                               1800.0, 3600.0, 7200.0, 10800.0, 21600.0, 43200.0, 86400.0, 172800.0};
    auto step = steps.back();
    for (auto const one : steps)
        if (one * 12.0 >= end) {
            step = one;
            break;
        }
    std::vector<double> times;
    for (int n = 0; n * step < end - 0.25 * step; ++n)
        times.push_back(n * step);
    times.push_back(end);
    return times;
}

// Between samples the charge is taken to go evenly; they lie close enough for that.
inline double charge_percent(std::vector<BatterySample> const& samples, std::size_t battery, double time) {
    auto const after = std::lower_bound(samples.begin(), samples.end(), time,
                                        [](BatterySample const& s, double t) { return s.time.value() < t; });
    if (after == samples.begin()) return samples.front().charge[battery].in_percent();
    if (after == samples.end()) return samples.back().charge[battery].in_percent();
    auto const before = after - 1;
    auto const share = (time - before->time.value()) / (after->time.value() - before->time.value());
    auto const low = before->charge[battery].in_percent();
    return low + share * (after->charge[battery].in_percent() - low);
}

inline void charge_table(Html& html, Bank const& bank, std::vector<BatterySample> const& samples,
                         std::string const& title) {
    auto const together = courses(bank, samples);
    std::vector<Column> columns{{"time"}};
    for (auto const& course : together)
        columns.push_back({course.words(bank, "every battery"), true});
    std::vector<std::vector<std::string>> rows;
    for (auto const time : round_times(samples.back().time.value())) {
        rows.push_back({unbroken(print(time * si::second))});
        for (auto const& course : together)
            rows.back().push_back(fmt::format("{:.0f} %", charge_percent(samples, course.first, time)));
    }
    html.table(title + ", in figures", columns, rows);
}

// Under a title of its own on the page.
inline void charge_course(Html& html, Bank const& bank, std::vector<BatterySample> const& samples,
                          std::string const& title, std::optional<Duration> wanted = {}) {
    if (samples.size() < 2) return;
    html.open("figure", "chart").element("figcaption", title);
    html.picture(to_svg(charge_chart(bank, samples, title, wanted))).close();
    charge_table(html, bank, samples, title);
}

} // namespace bankwright::page
