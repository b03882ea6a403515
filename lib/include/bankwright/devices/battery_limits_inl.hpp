// Bodies of battery_limits.hpp.
#pragma once

#include "bankwright/devices/battery_limits.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/tables/chemistries.hpp"

namespace bankwright {

namespace internal::chemistry_limits {

inline bool knows_cells(Battery const& battery) { return battery.chemistry && (battery.cells || battery.voltage); }

template <class Rows>
auto const& row(Rows const& rows, Chemistry chemistry) {
    return rows[static_cast<std::size_t>(chemistry)];
}

// A rate per hour is a current over the capacity in ampere hours.
inline std::optional<Current> at_rate(Battery const& battery, double per_hour) {
    if (!battery.capacity || per_hour == 0.0) return std::nullopt;
    return *battery.capacity * per_hour / (3600.0 * si::second);
}

} // namespace internal::chemistry_limits

BANKWRIGHT_INLINE bool has_protective_disconnect(Battery const& battery) {
    return battery.chemistry && is_lithium(*battery.chemistry);
}

BANKWRIGHT_INLINE std::optional<Voltage> low_cutoff(Battery const& battery) {
    if (battery.low_cutoff) return battery.low_cutoff;
    if (!internal::chemistry_limits::knows_cells(battery)) return std::nullopt;
    auto const& limits = internal::chemistry_limits::row(tables::chemistries::cutoffs, *battery.chemistry);
    return limits.low * cell_count(battery) * si::volt;
}

BANKWRIGHT_INLINE std::optional<Voltage> high_cutoff(Battery const& battery) {
    if (battery.high_cutoff) return battery.high_cutoff;
    if (!internal::chemistry_limits::knows_cells(battery)) return std::nullopt;
    auto const& limits = internal::chemistry_limits::row(tables::chemistries::cutoffs, *battery.chemistry);
    return limits.high * cell_count(battery) * si::volt;
}

BANKWRIGHT_INLINE std::optional<Current> discharge_limit(Battery const& battery) {
    if (battery.max_discharge || !battery.chemistry) return battery.max_discharge;
    return internal::chemistry_limits::at_rate(
        battery, internal::chemistry_limits::row(tables::chemistries::rates, *battery.chemistry).discharge);
}

BANKWRIGHT_INLINE std::optional<Current> charge_limit(Battery const& battery) {
    if (battery.max_charge || !battery.chemistry) return battery.max_charge;
    return internal::chemistry_limits::at_rate(
        battery, internal::chemistry_limits::row(tables::chemistries::rates, *battery.chemistry).charge);
}

BANKWRIGHT_INLINE TemperatureLimits temperature_limits(Chemistry chemistry) {
    auto const& row = internal::chemistry_limits::row(tables::chemistries::temperatures, chemistry);
    return {celsius(row.charge_low), celsius(row.charge_high), celsius(row.discharge_low), celsius(row.discharge_high)};
}

} // namespace bankwright
