// Batteries through time as rows: about a dozen round moments, each battery's charge, current and voltage.
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/reports/round_times.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::battery_rows {

// Those nearest to round times, the first and the last among them.
inline std::vector<std::size_t> chosen(std::vector<BatterySample> const& samples) {
    auto const begin = samples.front().time.value(), end = samples.back().time.value();
    auto const before = [](auto const& sample, double t) { return sample.time.value() < t; };
    std::vector<std::size_t> which{0};
    if (end > begin) {
        auto const step = round_step(samples.back().time - samples.front().time).value();
        for (auto t = step * (std::floor(begin / step) + 1.0); t < end - 0.02 * step; t += step) {
            auto sample = std::lower_bound(samples.begin(), samples.end(), t, before);
            if (sample != samples.begin() && t - (sample - 1)->time.value() < sample->time.value() - t) --sample;
            auto const index = static_cast<std::size_t>(sample - samples.begin());
            if (index > which.back()) which.push_back(index);
        }
    }
    if (which.back() + 1 < samples.size()) which.push_back(samples.size() - 1);
    return which;
}

// Without the minus of a current too small to print.
inline std::string amperes(Current current) {
    auto text = fmt::format("{:.2f} A", current.value());
    return text == "-0.00 A" ? "0.00 A" : text;
}

// Of rows that differ in nothing but the time, the first and the last.
inline void drop_repeated(std::vector<Row>& rows) {
    auto const same = [&](std::size_t a, std::size_t b) {
        return std::equal(rows[a].begin() + 1, rows[a].end(), rows[b].begin() + 1, rows[b].end());
    };
    std::vector<Row> kept;
    for (std::size_t r = 0; r < rows.size(); ++r)
        if (r == 0 || r + 1 == rows.size() || !same(r, r - 1) || !same(r, r + 1)) kept.push_back(rows[r]);
    rows = std::move(kept);
}

} // namespace internal::battery_rows

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
    for (auto const index : internal::battery_rows::chosen(samples)) {
        auto const& sample = samples[index];
        Row row{print(sample.time)};
        for (std::size_t b = 0; b < batteries.size(); ++b) {
            row.push_back(fmt::format("{:.1f} %", sample.charge[b].in_percent()));
            row.push_back(internal::battery_rows::amperes(sample.current[b]));
            if (!wide) row.push_back(fmt::format("{:.2f} V", sample.voltage[b].value()));
        }
        rows.push_back(std::move(row));
    }
    internal::battery_rows::drop_repeated(rows);
    return table(rows, aligned);
}

} // namespace bankwright
