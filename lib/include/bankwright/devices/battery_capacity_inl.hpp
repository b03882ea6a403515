// Bodies of battery_capacity.hpp.
#pragma once

#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/numeric/interpolate.hpp"
#include "bankwright/tables/chemistries.hpp"
#include "bankwright/tables/column.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bankwright {

namespace internal::capacity_ratings {
inline constexpr double hour = 3600.0;               // [s]
inline constexpr double month = 365.25 / 12 * 86400; // [s]
inline constexpr double reserve_celsius = (80.0 - 32.0) / 1.8;
inline constexpr double reserve_amperes = 25.0; // SAE J537: 25 A to 10.5 V at 27 degC

// The two ratings must lie apart to tell an exponent.
inline bool tell_exponent(Battery const& battery) {
    if (!battery.capacity || !battery.reserve) return false;
    auto const rated_current =
        battery.capacity->value() / battery.capacity_hours.value_or(20 * hour * si::second).value();
    return battery.reserve->value() > 0.0 && std::abs(std::log(reserve_amperes / rated_current)) > 0.1;
}
} // namespace internal::capacity_ratings

BANKWRIGHT_INLINE Charge rated_capacity(Battery const& battery) {
    if (!battery.capacity) throw std::invalid_argument("battery `" + battery.id + "` needs `capacity`");
    return *battery.capacity;
}

BANKWRIGHT_INLINE Duration rated_time(Battery const& battery) {
    return battery.capacity_hours.value_or(20.0 * internal::capacity_ratings::hour * si::second);
}

BANKWRIGHT_INLINE Duration peukert_time(Charge capacity, Duration rated, double exponent, Current current) {
    auto const rated_current = capacity.value() / rated.value();
    return rated * std::pow(rated_current / current.value(), exponent);
}

BANKWRIGHT_INLINE double peukert_exponent(Duration t1, Current i1, Duration t2, Current i2) {
    return std::log(t2.value() / t1.value()) / std::log(i1.value() / i2.value());
}

BANKWRIGHT_INLINE double peukert_exponent(Battery const& battery) {
    if (internal::capacity_ratings::tell_exponent(battery)) {
        constexpr auto reserve_celsius = internal::capacity_ratings::reserve_celsius;
        auto const rated = rated_time(battery);
        // The reserve is stated for a warmer battery than the capacity, and that gives a little more.
        auto const warm = battery.chemistry ? capacity_ratio(*battery.chemistry, celsius(reserve_celsius)) : 1.0;
        auto const rated_current = *battery.capacity * warm / rated;
        auto const exponent = peukert_exponent(rated, rated_current, *battery.reserve,
                                               internal::capacity_ratings::reserve_amperes * si::ampere);
        return std::clamp(exponent, 1.0, 2.0);
    }
    if (!battery.chemistry) return 1.0;
    return tables::chemistries::peukert[static_cast<std::size_t>(*battery.chemistry)].usual;
}

BANKWRIGHT_INLINE Duration reserve_at_exponent(Battery const& battery, double exponent) {
    namespace ratings = internal::capacity_ratings;
    auto const warm = battery.chemistry ? capacity_ratio(*battery.chemistry, celsius(ratings::reserve_celsius)) : 1.0;
    return peukert_time(rated_capacity(battery) * warm, rated_time(battery), exponent,
                        ratings::reserve_amperes * si::ampere);
}

BANKWRIGHT_INLINE UsualExponent usual_exponent(Chemistry chemistry) {
    auto const& row = tables::chemistries::peukert[static_cast<std::size_t>(chemistry)];
    return {row.usual, row.low, row.high};
}

BANKWRIGHT_INLINE Source peukert_source(Battery const& battery) {
    if (internal::capacity_ratings::tell_exponent(battery))
        return {"the battery's own ratings", "`capacity` and `reserve` (SAE J537: 25 A, 27 degC, to 1.75 V a cell)",
                "as stated", "definition quoted: two service texts; exponent derived"};
    return tables::chemistries::peukert_source;
}

BANKWRIGHT_INLINE double capacity_ratio(Chemistry chemistry, Temperature temperature) {
    namespace t = tables::chemistries;
    using tables::column;
    if (is_lithium(chemistry))
        return numeric::linear(column(t::lithium_capacity, &t::LithiumCapacityRow::celsius),
                               column(t::lithium_capacity, &t::LithiumCapacityRow::share), in_celsius(temperature));
    return 1.0 / numeric::linear(column(t::lead_capacity, &t::LeadCapacityRow::fahrenheit),
                                 column(t::lead_capacity, &t::LeadCapacityRow::factor),
                                 in_celsius(temperature) * 1.8 + 32.0);
}

BANKWRIGHT_INLINE DischargeLaw discharge_law(Battery const& battery, Temperature ambient) {
    auto const full =
        rated_capacity(battery) * battery.health.value_or(Health::of(1.0)).value() *
        (battery.chemistry ? capacity_ratio(*battery.chemistry, battery.temperature.value_or(ambient)) : 1.0);
    return {full, rated_time(battery), peukert_exponent(battery),
            battery.chemistry ? deep_charge(*battery.chemistry) : 0.0};
}

BANKWRIGHT_INLINE Charge usable_capacity(DischargeLaw const& law, Current current) {
    if (current.value() * law.rated.value() <= law.full.value()) return law.full;
    return peukert_time(law.full, law.rated, law.exponent, current) * current;
}

BANKWRIGHT_INLINE Charge usable_capacity(Battery const& battery, Current current, Temperature ambient) {
    return usable_capacity(discharge_law(battery, ambient), current);
}

BANKWRIGHT_INLINE StateOfCharge charge_after_standing(Chemistry chemistry, StateOfCharge charge, Duration standing,
                                                      Temperature temperature) {
    auto const lost = tables::chemistries::losses[static_cast<std::size_t>(chemistry)].monthly;
    auto const months =
        standing.value() / internal::capacity_ratings::month * std::exp2((in_celsius(temperature) - 25.0) / 10.0);
    return StateOfCharge::of(charge.value() * std::pow(1.0 - lost, months));
}

BANKWRIGHT_INLINE Efficiency coulombic_efficiency(Chemistry chemistry) {
    return Efficiency::of(tables::chemistries::losses[static_cast<std::size_t>(chemistry)].coulombic);
}

} // namespace bankwright
