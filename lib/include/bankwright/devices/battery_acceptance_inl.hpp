// Bodies of battery_acceptance.hpp.
#pragma once

#include "bankwright/devices/battery_acceptance.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/charger_limits.hpp"
#include "bankwright/tables/chemistries.hpp"

#include <algorithm>
#include <stdexcept>

namespace bankwright {
namespace internal::filling {

inline auto const& law(Battery const& battery) {
    if (!battery.chemistry) throw std::invalid_argument("battery `" + battery.id + "` needs `chemistry`");
    return tables::chemistries::acceptance[static_cast<std::size_t>(*battery.chemistry)];
}

// [C] that a full one holds: health and temperature count, the rate does not.
inline double whole(Battery const& battery, Temperature ambient) {
    return usable_capacity(battery, 0.0 * si::ampere, ambient).value();
}

inline constexpr double hour = 3600.0; // [s]

// [h] of what is missing over the current that it brings.
inline double hours(Battery const& battery, Temperature ambient) {
    return law(battery).hours * resistance_ratio(*battery.chemistry, battery.temperature.value_or(ambient));
}

} // namespace internal::filling

BANKWRIGHT_INLINE Current acceptance(Battery const& battery, StateOfCharge charge, Temperature ambient) {
    namespace filling = internal::filling;
    auto const missing = (1.0 - charge.value()) / filling::hours(battery, ambient); // [1/h]
    return filling::whole(battery, ambient) * (missing + filling::law(battery).side) / filling::hour * si::ampere;
}

BANKWRIGHT_INLINE Resistance charging_resistance(Battery const& battery, StateOfCharge charge, Temperature ambient) {
    auto const internal = internal_resistance(battery, charge, ambient);
    auto const cells = cell_count(battery);
    auto const absorption = internal::filling::law(battery).volts * cells * si::volt +
                            temperature_compensation(*battery.chemistry, cells, battery.temperature.value_or(ambient));
    auto const above = absorption - open_circuit_voltage(battery, charge, ambient);
    return std::max(internal, Resistance(above / acceptance(battery, charge, ambient)));
}

BANKWRIGHT_INLINE double share_stored(Battery const& battery, StateOfCharge charge, Temperature ambient) {
    auto const missing = 1.0 - charge.value();
    return missing / (missing + internal::filling::law(battery).side * internal::filling::hours(battery, ambient));
}

BANKWRIGHT_INLINE Current tail_current(Battery const& battery, Temperature ambient) {
    return internal::filling::whole(battery, ambient) * internal::filling::law(battery).tail / internal::filling::hour *
           si::ampere;
}

} // namespace bankwright
