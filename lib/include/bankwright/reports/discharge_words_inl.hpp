// Bodies of discharge_words.hpp.
#pragma once

#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/units/print.hpp"

#include <fmt/format.h>

namespace bankwright::run_words {

BANKWRIGHT_INLINE std::string ending(DischargeResult const& run) {
    switch (run.end) {
    case RunEnd::time:
        return run.legs_done > 0 ? "the last leg is over" : "still running when the time asked for is up";
    case RunEnd::battery_empty:
        return run.recovers ? fmt::format("`{}` gives no more at this current", run.ended_by)
                            : fmt::format("`{}` is empty", run.ended_by);
    case RunEnd::battery_cutoff:
        return fmt::format("`{}` is down to its cut-off voltage", run.ended_by);
    case RunEnd::load_cutoff:
        return fmt::format("`{}` sees less than its minimum voltage", run.ended_by);
    case RunEnd::no_operating_point:
        return "the bank can no longer supply what is asked of it";
    case RunEnd::nothing_drawn:
        return "nothing draws any current";
    }
    return {};
}

BANKWRIGHT_INLINE std::string about(Duration time) {
    return happens_at_once(time) ? "at once" : "about " + print(as_well_as_known(time));
}

BANKWRIGHT_INLINE std::string about(Duration time, std::optional<TimeRange> const& range) {
    if (!range || happens_at_once(time)) return about(time);
    auto const low = print(as_well_as_known(range->low)), high = print(as_well_as_known(range->high));
    return low == high ? about(time) : fmt::format("{} ({} to {})", about(time), low, high);
}

BANKWRIGHT_INLINE std::string watt_hours(Energy energy) { return fmt::format("{:.0f} Wh", energy.value() / 3600.0); }

BANKWRIGHT_INLINE std::string energy(EnergySplit const& split) {
    return fmt::format("{} to motors and loads, {} lost in conductors and contacts, {} lost in the batteries\n",
                       watt_hours(split.used), watt_hours(split.wiring_heat), watt_hours(split.battery_heat));
}

BANKWRIGHT_INLINE bool happens_at_once(Duration time) { return time < 1.0 * si::second; }

BANKWRIGHT_INLINE std::string lasting(Duration time) { return about(time); }

BANKWRIGHT_INLINE std::string drop_out(DroppedOut const& gone) {
    auto const when = happens_at_once(gone.time) ? std::string("at once") : "after " + about(gone.time);
    return fmt::format("{} the protective disconnect of `{}` opens", when, gone.battery);
}

BANKWRIGHT_INLINE std::string reversal(ReversedCell const& cell) {
    return fmt::format("after {} a weak cell of `{}` is empty, and is driven backwards from then on, to {}",
                       about(cell.time), cell.battery, print(cell.deepest));
}

} // namespace bankwright::run_words
