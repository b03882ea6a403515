#pragma once

#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/recharge_text.hpp"
#include "bankwright/reports/recharge_words.hpp"
#include "bankwright/reports/tables/battery_table.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cstddef>
#include <string>

#include <fmt/format.h>

namespace bankwright {
namespace internal::charge_text {

inline std::string since(Duration time) {
    return run_words::happens_at_once(time) ? "from the start" : "after " + run_words::about(time);
}

inline std::string batteries(Recharged const& recharged) {
    auto const& run = recharged.run;
    auto out = "\n" + battery_table(run.samples, recharged.batteries) + "\n";
    auto const& first = run.batteries.front();
    bool const together = std::all_of(run.batteries.begin(), run.batteries.end(), [&](RechargedBattery const& battery) {
        return battery.full && first.full && print(*battery.full) == print(*first.full);
    });
    if (together && run.batteries.size() > 1) out += fmt::format("every battery is full {}\n", since(*first.full));
    for (std::size_t b = 0; b < run.batteries.size(); ++b) {
        auto const& battery = run.batteries[b];
        auto const& id = recharged.batteries[b];
        if (!battery.full)
            out += fmt::format("`{}` is at {:.0f} % at the end, not full\n", id, battery.charge.in_percent());
        else if (!together || run.batteries.size() == 1)
            out += fmt::format("`{}` is full {}\n", id, since(*battery.full));
        auto const& limit = recharged.high_cutoffs[b];
        if (limit && battery.highest > *limit * 1.005)
            out += fmt::format("`{}` sees up to {}; at most {}: charge it by itself, or with an output of its own\n",
                               id, print(battery.highest), print(*limit));
    }
    return out;
}

} // namespace internal::charge_text

BANKWRIGHT_INLINE std::string recharge_text(Recharged const& recharged) {
    auto const& run = recharged.run;
    auto out = fmt::format("{}: {}{}: {}\n", terminal_safe(recharged.file),
                           recharged.arrangement ? *recharged.arrangement + ", " : std::string(),
                           charge_words::lasting(run), charge_words::ending(run));
    for (auto const& output : run.outputs)
        if (run.end != RechargeEnd::nothing_charges)
            out += fmt::format("{}: {} in all\n", charge_words::stages(output), print(output.given));
    for (auto const& gone : run.dropped_out)
        out += run_words::drop_out(gone) + ": its voltage is too high\n";
    if (run.end != RechargeEnd::nothing_charges)
        out += internal::charge_text::batteries(recharged) + assumed_line(recharged.assumed);
    for (auto const& line : recharged.sources)
        out += line + "\n";
    return out + errors_first(recharged.file, recharged.counts);
}

} // namespace bankwright
