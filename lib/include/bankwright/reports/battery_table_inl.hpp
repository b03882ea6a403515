// Batteries through time as rows: about a dozen moments, each battery's charge, current and voltage.
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {
namespace battery_rows {

// Evenly spread over the time, the first and the last among them.
inline std::vector<std::size_t> chosen(std::vector<BatterySample> const& samples) {
    constexpr int rows = 12;
    auto const begin = samples.front().time.value();
    auto const end = samples.back().time.value();
    std::vector<std::size_t> which;
    for (int i = 0; i <= rows; ++i) {
        auto const at = begin + (end - begin) * i / rows;
        auto const sample = std::lower_bound(samples.begin(), samples.end(), at,
                                             [](auto const& s, double t) { return s.time.value() < t; });
        auto const index = std::min(static_cast<std::size_t>(sample - samples.begin()), samples.size() - 1);
        if (which.empty() || which.back() != index) which.push_back(index);
    }
    return which;
}

// Without the minus of a current too small to print.
inline std::string amperes(Current current) {
    auto text = fmt::format("{:.2f} A", current.value());
    return text == "-0.00 A" ? "0.00 A" : text;
}

} // namespace battery_rows

// `samples` must not be empty. Three columns a battery fill a page with four batteries; with more of them the voltage,
// which says least, gives way.
inline std::string battery_table(std::vector<BatterySample> const& samples, std::vector<std::string> const& batteries) {
    bool const wide = batteries.size() > 4;
    std::vector<Row> rows{{"time"}};
    std::vector<Align> aligned{Align::left};
    for (auto const& id : batteries) {
        rows.front().insert(rows.front().end(), {id, ""});
        aligned.insert(aligned.end(), {Align::right, Align::right});
        if (wide) continue;
        rows.front().push_back("");
        aligned.push_back(Align::right);
    }
    for (auto const index : battery_rows::chosen(samples)) {
        auto const& sample = samples[index];
        Row row{print(sample.time)};
        for (std::size_t b = 0; b < batteries.size(); ++b) {
            row.push_back(fmt::format("{:.1f} %", sample.charge[b].in_percent()));
            row.push_back(battery_rows::amperes(sample.current[b]));
            if (!wide) row.push_back(fmt::format("{:.2f} V", sample.voltage[b].value()));
        }
        rows.push_back(std::move(row));
    }
    return table(rows, aligned);
}

} // namespace bankwright
