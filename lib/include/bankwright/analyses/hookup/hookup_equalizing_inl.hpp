// Bodies of hookup_equalizing.hpp: the gap is a source behind the resistance seen into it, and the connection its load.
#pragma once

#include "bankwright/analyses/hookup/hookup_equalizing.hpp"
#include "bankwright/analyses/hookup/hookup_order.hpp"
#include "bankwright/devices/battery_limits.hpp"

#include <algorithm>
#include <cmath>

namespace bankwright {

namespace internal::equalizing_loop {

// How the voltage over the gap answers to each battery, and the resistance around the loop.
inline Sensitivity round(PartialBank const& partial, Made const& made, Potentials const& now,
                         Connection const& connection) {
    auto const& first = connection.paths.front();
    auto const& last = connection.paths.back();
    Sensitivity loop;
    if (connection.paths.size() == 1 || now.between(first.from, first.to)) {
        loop = partial.sense(made, first.from, first.to);
        loop.ohms += first.ohms;
    } else if (now.between(last.from, last.to)) {
        loop = partial.sense(made, last.from, last.to);
        loop.ohms += last.ohms;
    } else { // a plug between two sides that each hold batteries
        loop = partial.sense(made, first.from, last.from);
        auto const there = partial.sense(made, first.to, last.to);
        for (std::size_t b = 0; b < loop.per_volt.size(); ++b)
            loop.per_volt[b] -= there.per_volt[b];
        loop.ohms += there.ohms + first.ohms + last.ohms;
    }
    return loop;
}

} // namespace internal::equalizing_loop

BANKWRIGHT_INLINE std::optional<Equalizing> equalizing(Bank const& bank, PartialBank const& partial,
                                                       HookupMeter const& meter, Made const& made,
                                                       Potentials const& now, std::size_t connection) {
    auto const& closing = partial.connections()[connection];
    auto const gap = closing_gap(closing, now);
    if (!gap) return std::nullopt;
    auto const loop = internal::equalizing_loop::round(partial, made, now, closing);
    auto const carries = [&](std::size_t b) { return std::abs(loop.per_volt[b]); };
    double volts = 0.0, less = 0.0, more = 0.0;
    bool any = false;
    for (std::size_t b = 0; b < loop.per_volt.size(); ++b) {
        any = any || carries(b) > 1e-9;
        volts += loop.per_volt[b] * partial.emf(b);
        auto const& range = meter.range(b);
        less += std::min(loop.per_volt[b] * range.low, loop.per_volt[b] * range.high);
        more += std::max(loop.per_volt[b] * range.low, loop.per_volt[b] * range.high);
    }
    if (!any || !(loop.ohms > 0.0)) return std::nullopt;
    constexpr double rounding = 1e-12; // of the voltages that cancel
    if (std::abs(volts) <= rounding * std::max(std::abs(less), std::abs(more)) + 1e-12) volts = 0.0;
    Equalizing result;
    result.gap = *gap * si::volt;
    result.expected = std::abs(volts) / loop.ohms * si::ampere;
    result.at_most = std::max(std::abs(less), std::abs(more)) / loop.ohms * si::ampere;
    for (std::size_t b = 0; b < loop.per_volt.size(); ++b) {
        auto const limit = charge_limit(bank.batteries[b]);
        if (!limit || carries(b) <= 1e-9) continue;
        auto const volts_to_limit = limit->value() / carries(b) * loop.ohms * si::volt;
        if (result.gap_limit && *result.gap_limit <= volts_to_limit) continue;
        result.gap_limit = volts_to_limit;
        result.limited_by = bank.batteries[b].id;
    }
    return result;
}

} // namespace bankwright
