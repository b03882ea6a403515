// What can be said of one key of a bank file, and of one section? The shape of the table in keys.hpp.
#pragma once

#include "bankwright/bank/part_kind.hpp"

#include <limits>
#include <optional>
#include <span>
#include <string_view>

namespace bankwright {

// What kind of value a key takes. From `voltage` on: text that holds a number with a unit.
enum class KeyKind {
    text,
    texts, // a list
    trips, // a list of points of a time-current band
    choice,
    integer,
    boolean,
    date,
    terminal,
    model,
    dimensions, // length, width and height
    price,
    voltage,
    current,
    resistance,
    power,
    charge,
    length,
    duration,
    mass,
    force,
    temperature,
    voltage_per_kelvin,
    wire_size,
    fraction,
};

constexpr bool is_quantity(KeyKind kind) { return kind >= KeyKind::voltage; }

// Keys whose value may be followed by its tolerance, "4 mohm +/- 10 %".
constexpr bool takes_tolerance(std::string_view key) {
    for (std::string_view const known : {"resistance", "joint", "contact", "charge", "capacity", "emf"})
        if (key == known) return true;
    return false;
}

// "a voltage", as a message says it.
constexpr std::string_view with_article(KeyKind kind) {
    switch (kind) {
    case KeyKind::text:
        return "a text";
    case KeyKind::texts:
        return "a list of texts";
    case KeyKind::trips:
        return "a list of points, each a multiple of the rating and the shortest and longest time";
    case KeyKind::choice:
        return "a word";
    case KeyKind::integer:
        return "a whole number";
    case KeyKind::boolean:
        return "true or false";
    case KeyKind::date:
        return "a date";
    case KeyKind::terminal:
        return "the name of a terminal";
    case KeyKind::model:
        return "the name of a model";
    case KeyKind::dimensions:
        return "length, width and height";
    case KeyKind::price:
        return "a price";
    case KeyKind::voltage:
        return "a voltage";
    case KeyKind::current:
        return "a current";
    case KeyKind::resistance:
        return "a resistance";
    case KeyKind::power:
        return "a power";
    case KeyKind::charge:
        return "a capacity";
    case KeyKind::length:
        return "a length";
    case KeyKind::duration:
        return "a time";
    case KeyKind::mass:
        return "a mass";
    case KeyKind::force:
        return "a force";
    case KeyKind::temperature:
        return "a temperature";
    case KeyKind::voltage_per_kelvin:
        return "a voltage per kelvin";
    case KeyKind::wire_size:
        return "a wire size";
    case KeyKind::fraction:
        return "a percentage";
    }
    return "a value";
}

// In the SI unit of the kind: V, A, ohm, W, C, m, s, kg, N, K, V/K, m2 of copper, 1. Whole numbers as they are.
struct Range {
    double least = -std::numeric_limits<double>::infinity();
    double most = std::numeric_limits<double>::infinity();
    bool above_least = false; // `least` itself is not allowed

    constexpr bool holds(double value) const { // a value that is no number is nowhere
        return (above_least ? value > least : value >= least) && value <= most;
    }
    constexpr bool is_bounded() const {
        return least > -std::numeric_limits<double>::infinity() || most < std::numeric_limits<double>::infinity();
    }
};

struct KeySpec {
    std::string_view name;
    KeyKind kind;
    std::string_view example; // as it is written in a file
    std::string_view meaning; // one line
    std::string_view if_absent = {};
    Range range = {};
    std::span<std::string_view const> choices = {}; // all that a choice may be; what a text usually is
};

// What a part must have: alternatives separated by `|`, each a list of keys. "resistance | size length" is met by
// `resistance` alone, or by both of the others.
struct Requirement {
    std::string_view alternatives;
    bool exactly_one = false; // and not more than one of the alternatives
};

struct SectionSpec {
    std::string_view name;
    std::string_view meaning;
    std::span<KeySpec const> keys;
    std::span<Requirement const> requirements = {};
    std::string_view terminals = {};   // of a part X
    std::optional<PartKind> kind = {}; // none for a section that holds no parts
};

} // namespace bankwright
