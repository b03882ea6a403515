// Bodies of recharge_words.hpp.
#pragma once

#include "bankwright/reports/discharge_words.hpp"
#include "bankwright/reports/recharge_words.hpp"
#include "bankwright/units/print.hpp"

#include <fmt/format.h>

namespace bankwright::charge_words {

BANKWRIGHT_INLINE std::string ending(RechargeResult const& run) {
    switch (run.end) {
    case RechargeEnd::full:
        return "charging has ended";
    case RechargeEnd::not_all_full:
        return "charging has ended, and not every battery is full";
    case RechargeEnd::time:
        return "still charging when the time asked for is up";
    case RechargeEnd::battery_empty:
        return fmt::format("`{}` is drained instead, until it gives no more", run.ended_by);
    case RechargeEnd::nothing_charges:
        return "no charger gives any current to a battery";
    }
    return {};
}

BANKWRIGHT_INLINE std::string lasting(RechargeResult const& run) {
    return run_words::about(run.duration, range_of(run));
}

BANKWRIGHT_INLINE std::string stages(OutputStages const& output) {
    auto const most = print(output.most), holds = print(output.holds);
    if (!output.bulk && !(output.given > 0.5 * si::coulomb)) return fmt::format("`{}` gives nothing", output.output);
    if (!output.bulk)
        return fmt::format("`{}` gives {} all the while and never reaches its {}", output.output, most, holds);
    if (!(output.bulk->value() > 0.0)) return fmt::format("`{}` holds {} from the start", output.output, holds);
    return fmt::format("`{}` gives {} for {}, then holds {}", output.output, most, run_words::about(*output.bulk),
                       holds);
}

} // namespace bankwright::charge_words
