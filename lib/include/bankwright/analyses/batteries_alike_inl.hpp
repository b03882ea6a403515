#pragma once

#include "bankwright/analyses/batteries_alike.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_resistance.hpp"

#include <algorithm>
#include <cmath>

namespace bankwright {
namespace internal::alike {

template <class ValueOf>
double mean(Bank const& bank, ValueOf const& value_of) {
    double sum = 0.0;
    for (auto const& battery : bank.batteries)
        sum += value_of(battery);
    return sum / static_cast<double>(bank.batteries.size());
}

inline bool of_one_kind(Bank const& bank) {
    auto const& first = bank.batteries.front();
    return std::all_of(bank.batteries.begin(), bank.batteries.end(), [&](Battery const& battery) {
        return battery.chemistry == first.chemistry && cell_count(battery) == cell_count(first) &&
               battery.capacity.has_value();
    });
}

} // namespace internal::alike

BANKWRIGHT_INLINE std::optional<Bank> with_batteries_alike(Bank const& bank) {
    using namespace internal::alike;
    if (bank.batteries.empty() || !bank.batteries.front().chemistry || !of_one_kind(bank)) return std::nullopt;
    auto const ambient = in_celsius(bank.system.ambient);
    auto const charge = mean(bank, [](Battery const& b) { return b.charge ? b.charge->value() : 1.0; });
    auto const health = mean(bank, [](Battery const& b) { return b.health ? b.health->value() : 1.0; });
    auto const capacity = mean(bank, [](Battery const& b) { return b.capacity->value(); });
    auto const temperature =
        mean(bank, [&](Battery const& b) { return b.temperature ? in_celsius(*b.temperature) : ambient; });
    // In parallel it is the conductances that add; with resistances that differ little this is their mean.
    auto const resistance =
        mean(bank, [&](Battery const& b) { return internal_resistance(b, bank.system.ambient).value(); });
    auto const peukert = mean(bank, [](Battery const& b) { return b.reserve ? b.reserve->value() : std::nan(""); });

    auto ideal = bank;
    for (auto& battery : ideal.batteries) {
        battery.charge = StateOfCharge::of(charge);
        battery.health = Health::of(health);
        battery.capacity = capacity * si::coulomb;
        battery.temperature = celsius(temperature);
        battery.resistance = resistance * si::ohm;
        battery.capacity_hours = bank.batteries.front().capacity_hours;
        battery.reserve = std::isnan(peukert) ? bank.batteries.front().reserve : peukert * si::second;
        battery.emf.reset();
        battery.dead_cells.reset();
        battery.weak_cells.reset();
        battery.weak_capacity.reset();
    }
    for (auto& jumper : ideal.jumpers)
        jumper.conductor.resistance = 0.0 * si::ohm;
    return ideal;
}

} // namespace bankwright
