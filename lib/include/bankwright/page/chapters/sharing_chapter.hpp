// Which battery works hardest? Bars, and the same in a table.
#pragma once

#include "bankwright/devices/battery_limits.hpp"
#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html/chart.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {

// What the parallel strings give together; none where they are not strings, or one gives nothing or takes.
inline std::optional<Current> given_by_strings(BankReport const& report) {
    if (report.strings.size() < 2) return {};
    Current sum{};
    for (auto const& string : report.strings) {
        auto const given = reading_of(report.point, string.front()).current;
        if (!(given.value() > 1e-3)) return {};
        sum += given;
    }
    return sum;
}

inline std::string share_of(BankReport const& report, std::string const& battery, Current total) {
    for (auto const& string : report.strings)
        if (std::find(string.begin(), string.end(), battery) != string.end())
            return fmt::format("{:.0f} %", 100.0 * reading_of(report.point, battery).current.value() / total.value());
    return {};
}

inline void sharing_chapter(Html& html, BankReport const& report) {
    constexpr std::size_t most_bars = 32;
    if (report.point.status != solver::Status::solved || report.bank.batteries.empty()) return;
    html.folded_chapter("sharing", report.bank.batteries.size() == 1 ? "How hard the battery works"
                                                                     : "How the batteries share the work");
    if (std::none_of(report.point.parts.begin(), report.point.parts.end(), [](PartReading const& part) {
            return part.kind == PartKind::battery && std::abs(part.current.value()) > 1e-3;
        })) {
        html.paragraph("No battery gives or takes any current " + moment_of(report) + ".").close();
        return;
    }
    BarChart chart{"Current of each battery", "current, A", {}, {}, {}};
    auto const total = given_by_strings(report);
    auto const& batteries = report.bank.batteries;
    bool const limited =
        std::any_of(batteries.begin(), batteries.end(), [](auto const& b) { return discharge_limit(b).has_value(); });
    std::vector<Column> columns{{"battery"}, {"current", true}};
    if (limited) columns.push_back({"may give", true});
    if (total) columns.push_back({"share", true});
    std::vector<std::vector<std::string>> rows;
    for (auto const& battery : batteries) {
        auto const current = reading_of(report.point, battery.id).current;
        auto const limit = discharge_limit(battery);
        if (chart.bars.size() < most_bars && std::isfinite(current.value()))
            chart.bars.push_back(
                {battery.id, current.value(), amperes(current), limit ? std::optional(limit->value()) : std::nullopt});
        rows.push_back({battery.id, amperes(current)});
        if (limited) rows.back().push_back(limit ? amperes(*limit) : "not stated");
        if (total) rows.back().push_back(share_of(report, battery.id, *total));
    }
    if (total) {
        auto const even = *total / static_cast<double>(report.strings.size());
        chart.mark = even.value();
        chart.mark_words = "even share " + amperes(even);
    }
    if (std::any_of(chart.bars.begin(), chart.bars.end(), [](Bar const& bar) { return bar.value < 0.0; }))
        html.paragraph("A white bar to the left: that battery is being charged.");
    if (limited) html.paragraph("The upright line at a bar: the most that the battery may give.");
    html.open("figure", "chart").element("figcaption", "Current of each battery").picture(to_svg(chart)).close();
    if (batteries.size() > most_bars)
        html.paragraph(fmt::format("The first {} batteries; the table has them all.", most_bars));
    html.table("Current of each battery, in figures", columns, rows);
    html.close();
}

} // namespace bankwright::page
