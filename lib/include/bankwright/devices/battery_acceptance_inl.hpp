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

} // namespace internal::filling

BANKWRIGHT_INLINE Current acceptance(Battery const& battery, StateOfCharge charge, Temperature ambient) {
    auto const& law = internal::filling::law(battery);
    auto const missing = (1.0 - charge.value()) / (law.hours * internal::filling::hour); // [1/s]
    return internal::filling::whole(battery, ambient) * (missing + law.side / internal::filling::hour) * si::ampere;
}

BANKWRIGHT_INLINE Resistance charging_resistance(Battery const& battery, StateOfCharge charge, Temperature ambient) {
    auto const internal = internal_resistance(battery, charge, ambient);
    auto const stages = charge_stages(*battery.chemistry, cell_count(battery));
    auto const absorption = 0.5 * (stages.absorption_low + stages.absorption_high);
    auto const above = absorption - open_circuit_voltage(battery, charge, ambient);
    return std::max(internal, Resistance(above / acceptance(battery, charge, ambient)));
}

BANKWRIGHT_INLINE double share_stored(Battery const& battery, StateOfCharge charge) {
    auto const& law = internal::filling::law(battery);
    auto const missing = 1.0 - charge.value();
    return missing / (missing + law.side * law.hours);
}

BANKWRIGHT_INLINE Current tail_current(Battery const& battery, Temperature ambient) {
    return internal::filling::whole(battery, ambient) * internal::filling::law(battery).tail / internal::filling::hour *
           si::ampere;
}

} // namespace bankwright
