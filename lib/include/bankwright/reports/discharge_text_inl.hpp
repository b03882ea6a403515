#pragma once

#include "bankwright/reports/discharge_text.hpp"
#include "bankwright/reports/measure.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

namespace bankwright {
namespace run_words {

inline std::string ending(DischargeResult const& run) {
    switch (run.end) {
    case RunEnd::time:
        return "still running when the time asked for is over";
    case RunEnd::battery_empty:
        return fmt::format("`{}` is empty", run.ended_by);
    case RunEnd::battery_cutoff:
        return fmt::format("`{}` is down to its cut-off voltage", run.ended_by);
    case RunEnd::load_cutoff:
        return fmt::format("`{}` sees less than its least voltage", run.ended_by);
    case RunEnd::no_operating_point:
        return "the bank can no longer give what is asked of it";
    case RunEnd::nothing_drawn:
        return "nothing draws any current";
    }
    return {};
}

// About a dozen samples, evenly spread over the run, the first and the last among them.
inline std::vector<std::size_t> chosen(DischargeResult const& run) {
    constexpr int rows = 12;
    std::vector<std::size_t> which;
    for (int i = 0; i <= rows; ++i) {
        auto const at = run.runtime.value() * i / rows;
        auto const sample = std::lower_bound(run.samples.begin(), run.samples.end(), at,
                                             [](auto const& s, double t) { return s.time.value() < t; });
        auto const index = std::min(static_cast<std::size_t>(sample - run.samples.begin()), run.samples.size() - 1);
        if (which.empty() || which.back() != index) which.push_back(index);
    }
    return which;
}

} // namespace run_words

BANKWRIGHT_INLINE std::string discharge_text(Discharged const& discharged) {
    auto const& run = discharged.run;
    auto out = fmt::format("{}: {}{}: {}\n", terminal_safe(discharged.file),
                           discharged.arrangement ? *discharged.arrangement + ", " : std::string(), print(run.runtime),
                           run_words::ending(run));
    for (auto const& gone : run.dropped_out)
        out += fmt::format("after {} the protective disconnect of `{}` opens\n", print(gone.time), gone.battery);
    if (run.samples.empty()) return out;

    // Three columns a battery fill a page with four batteries; with more the voltage, which says least, gives way.
    bool const wide = discharged.batteries.size() > 4;
    std::vector<Row> rows{{"time"}};
    std::vector<Align> aligned{Align::left};
    for (auto const& id : discharged.batteries) {
        rows.front().insert(rows.front().end(), {id, ""});
        aligned.insert(aligned.end(), {Align::right, Align::right});
        if (wide) continue;
        rows.front().push_back("");
        aligned.push_back(Align::right);
    }
    for (auto const index : run_words::chosen(run)) {
        auto const& sample = run.samples[index];
        Row row{print(sample.time)};
        for (std::size_t b = 0; b < discharged.batteries.size(); ++b) {
            row.push_back(fmt::format("{:.1f} %", sample.charge[b].in_percent()));
            row.push_back(fmt::format("{:.2f} A", sample.current[b].value()));
            if (!wide) row.push_back(fmt::format("{:.2f} V", sample.voltage[b].value()));
        }
        rows.push_back(std::move(row));
    }
    out += "\n" + table(rows, aligned) + "\n";
    for (std::size_t b = 0; b < discharged.batteries.size(); ++b) {
        auto const left = run.samples.back().charge[b].value();
        if (run.end == RunEnd::time || left < 0.005 || !discharged.capacities[b]) continue;
        out += fmt::format("`{}` still holds {} when the run ends\n", discharged.batteries[b],
                           print(*discharged.capacities[b] * left));
    }
    if (discharged.counts.error > 0)
        out += fmt::format("\n`bankwright check {}` finds {} in this bank: see to that before closing any breaker\n",
                           terminal_safe(discharged.file), counted(discharged.counts.error, "error"));
    return out;
}

} // namespace bankwright
