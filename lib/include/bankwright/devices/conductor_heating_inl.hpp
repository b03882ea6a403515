// Bodies of conductor_heating.hpp.
#pragma once

#include "bankwright/devices/conductor_ampacity.hpp"
#include "bankwright/devices/conductor_heating.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/tables/short_circuit.hpp"

#include <algorithm>
#include <cmath>

namespace bankwright {

BANKWRIGHT_INLINE std::optional<Temperature> conductor_temperature(Conductor const& conductor, Current current,
                                                                   Temperature ambient) {
    namespace published = internal::published_ampacity;
    auto const allowed = ampacity(conductor, ambient);
    if (!allowed) return std::nullopt;
    auto around = in_celsius(ambient);
    if (conductor.engine_space.value_or(false)) around = std::max(around, published::engine_space_celsius);
    auto const share = current.value() / (allowed->published.value() * allowed->bundling);
    auto const rise = in_celsius(allowed->insulation) - published::basis_celsius;
    return celsius(around + rise * share * share);
}

BANKWRIGHT_INLINE Temperature copper_temperature(Conductor const& conductor, Current current, Temperature ambient) {
    if (conductor.temperature) return *conductor.temperature;
    auto const warm = conductor_temperature(conductor, current, ambient);
    if (!warm) return ambient;
    auto const insulation = in_celsius(ampacity(conductor, ambient)->insulation);
    return celsius(std::min(in_celsius(*warm), std::max(insulation, in_celsius(ambient))));
}

BANKWRIGHT_INLINE Voltage conductor_drop(Conductor const& conductor, Current current, Temperature ambient,
                                         Resistance joint) {
    return current * resistance(conductor, copper_temperature(conductor, current, ambient), joint);
}

BANKWRIGHT_INLINE double short_circuit_k(Temperature initial, Temperature final) {
    return 226.0 * std::sqrt(std::log(1.0 + (in_celsius(final) - in_celsius(initial)) / (234.5 + in_celsius(initial))));
}

BANKWRIGHT_INLINE Temperature short_circuit_limit(Temperature insulation) {
    auto const rating = in_celsius(insulation);
    return celsius(rating < 105.5 ? 160.0 : rating < 150.5 ? 250.0 : 350.0);
}

BANKWRIGHT_INLINE std::optional<LetThrough> withstand(Conductor const& conductor) {
    if (!conductor.size) return std::nullopt;
    auto const initial = conductor.insulation.value_or(celsius(60.0));
    auto const k = short_circuit_k(initial, short_circuit_limit(initial));
    auto const square_millimeters = conductor.size->area().value() * 1e6;
    return LetThrough::from_value(k * k * square_millimeters * square_millimeters);
}

BANKWRIGHT_INLINE std::optional<Duration> withstand_time(Conductor const& conductor, Current current) {
    auto const borne = withstand(conductor);
    if (!borne) return std::nullopt;
    return Duration::from_value(borne->value() / (current.value() * current.value()));
}

} // namespace bankwright
