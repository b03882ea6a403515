// Bodies of run_range.hpp.
#pragma once

#include "bankwright/analyses/run_range.hpp"
#include "bankwright/analyses/spreads.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"

#include <cmath>
#include <stdexcept>

namespace bankwright {
namespace internal::run_ranges {

// Everything that is not known, where it makes the run shorter; with -1 longer.
inline Bank leaning(Bank bank, double shorter) {
    for (auto& battery : bank.batteries) {
        if (!battery.resistance)
            battery.resistance = internal_resistance(battery, bank.system.ambient) *
                                 (1.0 + shorter * resistance_spread(battery).value());
        auto const share = 1.0 - shorter * Spreads{}.capacity.value();
        *battery.capacity *= share;
        auto const usual = usual_exponent(*battery.chemistry);
        battery.reserve = battery.reserve ? Duration(*battery.reserve * share)
                                          : reserve_at_exponent(battery, shorter > 0.0 ? usual.high : usual.low);
        if (shorter > 0.0 && !battery.health && !has_weak_cell(battery))
            battery.health = Health::of(1.0 - unknown_wear);
    }
    return bank;
}

} // namespace internal::run_ranges

BANKWRIGHT_INLINE Duration as_well_as_known(Duration time) {
    constexpr double minute = 60.0;
    if (time.value() < 3.0 * minute) return time;
    auto const step = time.value() < 30.0 * minute ? minute : 5.0 * minute;
    return std::round(time.value() / step) * step * si::second;
}

BANKWRIGHT_INLINE RunRange run_range(Bank const& bank, DischargeOptions options) {
    if (auto const missing = missing_for_discharge(bank)) throw std::invalid_argument(*missing);
    options.rest = options.every = {};
    options.samples_apart = 1.0;
    options.keep_samples = false;
    auto const run = [&](double shorter) { return discharge(internal::run_ranges::leaning(bank, shorter), options); };
    auto const low = run(1.0), high = run(-1.0);
    RunRange range{{low.runtime, high.runtime}, {}};
    if (low.to_reserve && high.to_reserve) range.to_reserve = TimeRange{*low.to_reserve, *high.to_reserve};
    return range;
}

} // namespace bankwright
