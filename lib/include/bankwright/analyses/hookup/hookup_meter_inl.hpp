// Bodies of hookup_meter.hpp.
#pragma once

#include "bankwright/analyses/hookup/hookup_meter.hpp"
#include "bankwright/graph/as_index.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace bankwright {

namespace internal::hookup_metering {

// What a battery may give at rest: its stated charge either way; the whole of its chemistry's span where no charge is
// stated; a measured `emf` as it is.
inline EmfRange emf_range(Battery const& battery, StateOfCharge within, Temperature ambient, double emf) {
    if (battery.emf || !battery.chemistry) return {emf, emf};
    if (!battery.charge) return bankwright::emf_range(battery, 0.0, 1.0, ambient);
    auto const charge = battery.charge->value();
    return bankwright::emf_range(battery, charge - within.value(), charge + within.value(), ambient);
}

} // namespace internal::hookup_metering

BANKWRIGHT_INLINE HookupMeter::HookupMeter(Bank const& bank, PartialBank const& partial, HookupOptions const& options)
    : partial_(partial), options_(options) {
    for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
        ranges_.push_back(internal::hookup_metering::emf_range(bank.batteries[b], options.charge_within,
                                                               bank.system.ambient, partial.emf(b)));
        widest_ = std::max(widest_, 0.5 * (ranges_[b].high - ranges_[b].low));
    }
}

BANKWRIGHT_INLINE double HookupMeter::error(double volts) const {
    constexpr double full_scale = 20.0; // [V] of a 2000-count meter that shows hundredths
    MeterAccuracy const meter{options_.of_reading, options_.digits,
                              options_.resolution.value_or((std::abs(volts) < full_scale ? 0.01 : 0.1) * si::volt)};
    return meter_error(meter, volts * si::volt).value();
}

BANKWRIGHT_INLINE MeterReading HookupMeter::read(Made const& made, Potentials const& potentials, int red,
                                                 int black) const {
    auto volts = potentials.between(red, black);
    if (volts && *volts < 0.0) {
        std::swap(red, black);
        volts = -*volts;
    }
    auto const& names = partial_.terminals();
    MeterReading reading;
    reading.red = names[as_index(red)];
    reading.black = names[as_index(black)];
    if (!volts) return reading;
    double low = *volts, high = *volts;
    auto const sensitivity = partial_.sense(made, red, black);
    for (std::size_t b = 0; b < ranges_.size(); ++b) {
        auto const less = sensitivity.per_volt[b] * (ranges_[b].low - partial_.emf(b));
        auto const more = sensitivity.per_volt[b] * (ranges_[b].high - partial_.emf(b));
        low += std::min(less, more);
        high += std::max(less, more);
    }
    reading.expected = *volts * si::volt;
    reading.low = (low - error(low)) * si::volt;
    reading.high = (high + error(high)) * si::volt;
    return reading;
}

BANKWRIGHT_INLINE MeterReading HookupMeter::read_battery(std::size_t battery,
                                                         std::vector<PossibleMistake> const& mistakes) const {
    Made const none(partial_.connections().size(), 0);
    auto reading = read(none, partial_.read(none), partial_.plus(battery), partial_.minus(battery));
    std::vector<Cause> causes;
    for (auto const& possible : mistakes)
        if (possible.deviation.battery == static_cast<int>(battery) && tells(reading, possible.deviation.emf))
            causes.push_back({possible.mistake, possible.deviation.emf * si::volt, {}, false});
    reading.wrong = merged(std::move(causes));
    return reading;
}

// A floating meter shows about 0 V.
BANKWRIGHT_INLINE bool HookupMeter::tells(MeterReading const& right, std::optional<double> wrong) const {
    auto const shown = wrong.value_or(0.0);
    if (!right.expected) return std::abs(shown) > error(shown);
    return shown < right.low.value() || shown > right.high.value();
}

BANKWRIGHT_INLINE std::vector<WrongReading> HookupMeter::merged(std::vector<Cause> causes) const {
    auto const shown = [](Cause const& cause) { return cause.reads.value_or(Voltage{}).value(); };
    auto const loaded = [](Cause const& cause) { return cause.through_load.value_or(Voltage{}).value(); };
    std::vector<WrongReading> groups;
    for (auto& cause : causes) { // in the order in which they are thought of
        auto const volts = shown(cause);
        auto const like = std::find_if(groups.begin(), groups.end(), [&](WrongReading const& group) {
            auto const& first = group.causes.front();
            return first.depends_on_load == cause.depends_on_load &&
                   std::abs(shown(first) - volts) <= error(volts) + widest_ &&
                   std::abs(loaded(first) - loaded(cause)) <= error(loaded(cause)) + widest_;
        });
        if (like != groups.end())
            like->causes.push_back(std::move(cause));
        else
            groups.push_back({{std::move(cause)}});
    }
    return groups;
}

} // namespace bankwright
