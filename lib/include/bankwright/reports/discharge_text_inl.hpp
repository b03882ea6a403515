#pragma once

#include "bankwright/reports/discharge_text.hpp"
#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/tables/battery_table.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::run_text {

// What the differences between the batteries, and their joining, cost. Less than five minutes is not known.
inline std::string against_alike(Discharged const& discharged) {
    constexpr double five_minutes = 300.0;
    if (!discharged.alike || discharged.batteries.size() < 2) return {};
    auto const more = *discharged.alike - discharged.run.runtime;
    if (more.value() < five_minutes) return {};
    return fmt::format("if the batteries were all alike and their jumpers lossless, it would last {} longer\n",
                       run_words::about(more));
}

// How long to the reserve, where a run is planned to end, and how long until it must.
inline std::string times(Discharged const& discharged) {
    auto const& run = discharged.run;
    auto const& range = discharged.range;
    auto const until_it_must = [&] {
        if (run.end == RunEnd::time) return print(run.runtime); // as it was asked for
        return run_words::about(run.runtime, range ? std::optional(range->runtime) : std::nullopt);
    };
    auto const whole = fmt::format("{}: {}", until_it_must(), run_words::ending(run));
    if (!run.to_reserve || !(*run.to_reserve < run.runtime) || run_words::happens_at_once(*run.to_reserve))
        return whole;
    return fmt::format("{} to the reserve; {}",
                       run_words::about(*run.to_reserve, range ? range->to_reserve : std::nullopt), whole);
}

// In each battery when the run ends, alike ones in one line.
inline std::string left(Discharged const& discharged) {
    auto const& run = discharged.run;
    if (run.end == RunEnd::time) return {};
    std::vector<std::pair<std::string, std::string>> said; // how much, in which
    for (std::size_t b = 0; b < discharged.batteries.size(); ++b) {
        auto const share = run.samples.back().charge[b].value();
        if (share < 0.005 || !discharged.capacities[b]) continue;
        auto const much = fmt::format("about {:.0f} Ah", discharged.capacities[b]->value() / 3600.0 * share);
        auto const id = fmt::format("`{}`", discharged.batteries[b]);
        auto const alike = std::find_if(said.begin(), said.end(), [&](auto const& one) { return one.first == much; });
        if (alike == said.end())
            said.push_back({much, id});
        else
            alike->second += ", " + id;
    }
    std::string out;
    for (auto const& [much, ids] : said)
        out += fmt::format("{} left in {}\n", much, ids);
    if (run.recovers) out += "what is left comes back at a smaller current, or after a rest\n";
    return out;
}

inline std::string rest(Discharged const& discharged) {
    auto const& samples = discharged.run.rest;
    if (samples.empty()) return {};
    auto const& empty = discharged.run.rest_ended_by;
    return fmt::format("\nat rest afterwards, for {}{}; a current flows where one battery charges another\n\n{}",
                       print(samples.back().time - samples.front().time),
                       empty.empty() ? "" : fmt::format(", until `{}` gives no more", empty),
                       battery_table(samples, discharged.batteries));
}

} // namespace internal::run_text

BANKWRIGHT_INLINE std::string discharge_text(Discharged const& discharged) {
    auto const& run = discharged.run;
    auto out = fmt::format("{}: {}{}\n", terminal_safe(discharged.file),
                           discharged.arrangement ? *discharged.arrangement + ", " : std::string(),
                           internal::run_text::times(discharged));
    for (auto const& gone : run.dropped_out)
        out += run_words::drop_out(gone) + "\n";
    for (auto const& cell : run.reversed_cells)
        out += run_words::reversal(cell) + "\n";
    if (run.samples.empty()) return out;

    out += "\n" + battery_table(run.samples, discharged.batteries) + "\n";
    out += internal::run_text::left(discharged);
    if (run.energy.used.value() > 0.0) out += run_words::energy(run.energy);
    out += internal::run_text::against_alike(discharged) + assumed_line(discharged.assumed) +
           internal::run_text::rest(discharged);
    return out + errors_first(discharged.file, discharged.counts);
}

} // namespace bankwright
