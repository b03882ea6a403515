// What is each kind of key called, in which SI unit is its value, and which type holds it?
#pragma once

#include "bankwright/config/key_spec.hpp"
#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <array>
#include <cstddef>
#include <string_view>

namespace bankwright {

struct KeyKindName {
    KeyKind kind;
    std::string_view name;
    std::string_view unit; // SI; empty for what is no quantity
};

// In the order of KeyKind.
inline constexpr std::array<KeyKindName, 24> key_kind_names{{
    {KeyKind::text, "text", ""},
    {KeyKind::texts, "texts", ""},
    {KeyKind::trips, "trips", ""},
    {KeyKind::choice, "choice", ""},
    {KeyKind::integer, "integer", ""},
    {KeyKind::boolean, "boolean", ""},
    {KeyKind::date, "date", ""},
    {KeyKind::terminal, "terminal", ""},
    {KeyKind::model, "model", ""},
    {KeyKind::dimensions, "dimensions", ""},
    {KeyKind::price, "price", ""},
    {KeyKind::voltage, "voltage", "V"},
    {KeyKind::current, "current", "A"},
    {KeyKind::resistance, "resistance", "ohm"},
    {KeyKind::power, "power", "W"},
    {KeyKind::charge, "charge", "C"},
    {KeyKind::length, "length", "m"},
    {KeyKind::duration, "duration", "s"},
    {KeyKind::mass, "mass", "kg"},
    {KeyKind::force, "force", "N"},
    {KeyKind::temperature, "temperature", "K"},
    {KeyKind::voltage_per_kelvin, "voltage_per_kelvin", "V/K"},
    {KeyKind::wire_size, "wire_size", "m2"},
    {KeyKind::fraction, "fraction", "1"},
}};

constexpr bool stand_in_their_order(std::array<KeyKindName, 24> const& names) {
    for (std::size_t i = 0; i < names.size(); ++i)
        if (names[i].kind != static_cast<KeyKind>(i) || names[i].unit.empty() == is_quantity(names[i].kind))
            return false;
    return names.back().kind == KeyKind::fraction; // the last there is
}
static_assert(stand_in_their_order(key_kind_names), "KeyKind is an index into these names");

constexpr KeyKindName const& kind_name(KeyKind kind) { return key_kind_names[static_cast<std::size_t>(kind)]; }

template <class T>
struct TypeOfKey {
    using type = T;
};

// Calls visit(TypeOfKey<Q>()) with the quantity that a kind of key holds; any fraction stands for all. Only for
// is_quantity(kind).
template <class Visit>
auto with_quantity(KeyKind kind, Visit&& visit) {
    switch (kind) {
    case KeyKind::current:
        return visit(TypeOfKey<Current>());
    case KeyKind::resistance:
        return visit(TypeOfKey<Resistance>());
    case KeyKind::power:
        return visit(TypeOfKey<Power>());
    case KeyKind::charge:
        return visit(TypeOfKey<Charge>());
    case KeyKind::length:
        return visit(TypeOfKey<Length>());
    case KeyKind::duration:
        return visit(TypeOfKey<Duration>());
    case KeyKind::mass:
        return visit(TypeOfKey<Mass>());
    case KeyKind::force:
        return visit(TypeOfKey<Force>());
    case KeyKind::temperature:
        return visit(TypeOfKey<Temperature>());
    case KeyKind::voltage_per_kelvin:
        return visit(TypeOfKey<VoltagePerTemperature>());
    case KeyKind::wire_size:
        return visit(TypeOfKey<WireSize>());
    case KeyKind::fraction:
        return visit(TypeOfKey<StateOfCharge>());
    default:
        return visit(TypeOfKey<Voltage>());
    }
}

} // namespace bankwright
