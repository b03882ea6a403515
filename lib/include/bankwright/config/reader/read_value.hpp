// From one value in the file to a value in the program, or what is wrong with it.
#pragma once

#include "bankwright/bank/reading_sheet.hpp"
#include "bankwright/config/document.hpp"
#include "bankwright/config/file_rules.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/schema/key_words.hpp"
#include "bankwright/devices/charger.hpp"
#include "bankwright/devices/date.hpp"
#include "bankwright/devices/joining.hpp"
#include "bankwright/devices/motor.hpp"
#include "bankwright/devices/protection.hpp"
#include "bankwright/devices/role.hpp"
#include "bankwright/findings/level.hpp"
#include "bankwright/text/closest.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/text/utf8.hpp"
#include "bankwright/units/dimensions.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/units/price.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::reader {

using internal::key_words::listed;

struct Trouble {
    RuleInfo const* rule;
    std::string message; // goes on after "`key` of `part` "
    std::string help;
};

template <class T>
struct Outcome {
    std::optional<T> value;
    std::optional<Trouble> trouble;
    std::optional<Spread> spread{}; // of a quantity, if the text states its tolerance
};

// "4 mohm +/- 10 %" in its two parts; the second is empty where there is none.
struct Tolerated {
    std::string_view value;
    std::string_view spread;
    bool has_spread = false;
};

inline Tolerated split_tolerance(std::string_view text) {
    for (std::string_view const sign : {"\u00B1", "+/-", "+-"})
        if (auto const at = text.find(sign); at != std::string_view::npos)
            return {text.substr(0, at), text.substr(at + sign.size()), true};
    return {text, {}};
}

// Foreign text in a message: safe on a terminal, and not longer than a line.
inline std::string clipped(std::string_view text) {
    constexpr int most = 60;
    std::string kept;
    int count = 0;
    while (!text.empty() && count++ < most) {
        auto const point = first_code_point(text);
        kept += terminal_safe(point, text.substr(0, point.length));
        text.remove_prefix(point.length);
    }
    return text.empty() ? kept : kept + "...";
}

inline std::string in_backquotes(std::string_view text) { return "`" + clipped(text) + "`"; }

// What stands there, as a message says it.
inline std::string shown(DocumentValue const& value) {
    switch (value.kind) {
    case DocumentValue::Kind::text:
        return "\"" + clipped(value.text) + "\"";
    case DocumentValue::Kind::integer:
        return fmt::format("{}", value.integer);
    case DocumentValue::Kind::number:
        return fmt::format("{:#}", value.number);
    case DocumentValue::Kind::boolean:
        return value.boolean ? "true" : "false";
    case DocumentValue::Kind::date:
        return fmt::format("{:04}-{:02}-{:02}", value.date.year, value.date.month, value.date.day);
    case DocumentValue::Kind::time:
        return "a time";
    case DocumentValue::Kind::array:
        return "an array";
    case DocumentValue::Kind::table:
        return "a table";
    }
    return "a value";
}

inline Trouble wrong_kind(KeySpec const& key, DocumentValue const& value) {
    std::string help = fmt::format("write `{} = {}`", key.name, key.example);
    bool const in_quotes = value.kind == DocumentValue::Kind::text && key.example.substr(0, 1) != "\"";
    if (in_quotes) help += ", without quotes";
    return {&file_bad_value, fmt::format("is {}; expected {}", shown(value), with_article(key.kind)), help};
}

// From the text after the sign: a percentage of the value, or something of the value's own kind.
template <class T>
std::optional<Spread> spread_of(T const& value, std::string_view text) {
    constexpr double most = 0.9; // more is no tolerance any more
    double share = 0.0;
    if (auto const percents = parse<Spread>(text); percents.value)
        share = percents.value->value();
    else if (auto const same = parse<T>(text); same.value)
        share = internal::key_words::in_si(*same.value) / internal::key_words::in_si(value);
    if (!(share > 0.0 && share <= most)) return std::nullopt;
    return Spread::of(share);
}

// Quantities: text with a number and a unit.
template <class T>
Outcome<T> value_of(KeySpec const& key, DocumentValue const& value) {
    using Kind = DocumentValue::Kind;
    auto const help = [&] { return fmt::format("write it with its unit, as in `{} = {}`", key.name, key.example); };
    if (value.kind == Kind::integer || value.kind == Kind::number)
        return {{},
                Trouble{&file_bad_unit,
                        fmt::format("is {}, without a unit; expected {} such as {}", shown(value),
                                    with_article(key.kind), key.example),
                        help()}};
    if (value.kind != Kind::text) return {{}, wrong_kind(key, value)};
    auto const tolerated = split_tolerance(value.text);
    if (tolerated.has_spread && !takes_tolerance(key.name))
        return {{},
                Trouble{&file_bad_value, fmt::format("is {}; a tolerance is not known of it", shown(value)),
                        "write the value alone; a tolerance may stand at `resistance`, `joint`, `contact`, `charge`, "
                        "`capacity` and `emf`"}};
    Parsed<T> parsed = parse<T>(tolerated.value);
    if (!parsed.value)
        return {{},
                Trouble{parsed.unit_is_wrong ? &file_bad_unit : &file_bad_value,
                        fmt::format("cannot be read: {}", parsed.problem), help()}};
    if (!key.range.holds(internal::key_words::in_si(*parsed.value)))
        return {
            {},
            Trouble{&file_bad_value,
                    fmt::format("is {}; allowed is {}", shown(value), internal::key_words::range_text<T>(key.range)),
                    fmt::format("correct the value, as in `{} = {}`", key.name, key.example)}};
    if (!tolerated.has_spread) return {*parsed.value, {}};
    auto const spread = spread_of(*parsed.value, tolerated.spread);
    if (!spread)
        return {
            {},
            Trouble{&file_bad_value,
                    fmt::format("is {}; its tolerance must be a percentage, or a value of the same kind, above 0 and "
                                "at most 90 % of it",
                                shown(value)),
                    "write it as in `\"4 mohm +/- 10 %\"`"}};
    return {*parsed.value, {}, spread};
}

template <>
inline Outcome<std::string> value_of(KeySpec const& key, DocumentValue const& value) {
    if (value.kind != DocumentValue::Kind::text) return {{}, wrong_kind(key, value)};
    return {value.text, {}};
}

template <>
inline Outcome<std::vector<std::string>> value_of(KeySpec const& key, DocumentValue const& value) {
    if (value.kind != DocumentValue::Kind::array) return {{}, wrong_kind(key, value)};
    std::vector<std::string> texts;
    for (auto const& item : value.items) {
        if (item.kind != DocumentValue::Kind::text)
            return {{},
                    Trouble{&file_bad_value, fmt::format("holds {}; expected {}", shown(item), with_article(key.kind)),
                            fmt::format("write `{} = {}`", key.name, key.example)}};
        texts.push_back(item.text);
    }
    return {std::move(texts), {}};
}

// Sizes of conductors.
template <>
inline Outcome<std::vector<WireSize>> value_of(KeySpec const& key, DocumentValue const& value) {
    auto const texts = value_of<std::vector<std::string>>(key, value);
    if (!texts.value) return {{}, texts.trouble};
    auto const help = fmt::format("write `{} = {}`", key.name, key.example);
    if (texts.value->empty())
        return {{}, Trouble{&file_bad_value, "is empty; expected at least one size of a conductor", help}};
    std::vector<WireSize> sizes;
    for (auto const& text : *texts.value) {
        auto const size = parse<WireSize>(text);
        if (!size.value || !keys::copper_area.holds(size.value->area().value()))
            return {{},
                    Trouble{&file_bad_value,
                            fmt::format("holds \"{}\"; expected a gauge or a cross-section, such as \"6 AWG\" or "
                                        "\"16 mm2\"",
                                        clipped(text)),
                            help}};
        sizes.push_back(*size.value);
    }
    return {std::move(sizes), {}};
}

// What is wrong with one point of a band, after the one before it; nothing where it is right.
inline std::optional<std::string> trouble_in_trip(DocumentValue const& item, std::vector<TripLimit>& trips) {
    using Kind = DocumentValue::Kind;
    auto const is_text = [](DocumentValue const& one) { return one.kind == Kind::text; };
    if (item.kind != Kind::array || item.items.size() != 3 ||
        !std::all_of(item.items.begin(), item.items.end(), is_text))
        return fmt::format("holds {}; expected a multiple of the rating, the shortest and the longest time, as texts",
                           shown(item));
    auto const multiple = parse<Ratio>(item.items[0].text);
    auto const at_least = parse<Duration>(item.items[1].text);
    auto const at_most = parse<Duration>(item.items[2].text);
    if (!multiple.value) return fmt::format("holds a multiple that cannot be read: {}", multiple.problem);
    if (!at_least.value) return fmt::format("holds a time that cannot be read: {}", at_least.problem);
    if (!at_most.value) return fmt::format("holds a time that cannot be read: {}", at_most.problem);
    TripLimit const trip{multiple.value->value(), *at_least.value, *at_most.value};
    if (!(trip.multiple >= 1.0 && trip.multiple <= 100.0))
        return fmt::format("holds {}; allowed is from 100 % to 10000 % of the rating", shown(item.items[0]));
    if (!(trip.at_least.value() >= 0.0 && trip.at_most > trip.at_least))
        return fmt::format("holds {} and {}; allowed is a longest time above the shortest", shown(item.items[1]),
                           shown(item.items[2]));
    if (!trips.empty() && !(trip.multiple > trips.back().multiple && trip.at_most <= trips.back().at_most))
        return fmt::format("holds {} after {:.4g} %; allowed are rising multiples, and longest times that do not rise",
                           shown(item.items[0]), 100.0 * trips.back().multiple);
    trips.push_back(trip);
    return std::nullopt;
}

template <>
inline Outcome<std::vector<TripLimit>> value_of(KeySpec const& key, DocumentValue const& value) {
    auto const help = fmt::format("write `{} = {}`", key.name, key.example);
    if (value.kind != DocumentValue::Kind::array || value.items.empty()) return {{}, wrong_kind(key, value)};
    std::vector<TripLimit> trips;
    for (auto const& item : value.items)
        if (auto const wrong = trouble_in_trip(item, trips)) return {{}, Trouble{&file_bad_value, *wrong, help}};
    return {std::move(trips), {}};
}

// What a parser of its own reads: dimensions and prices.
template <class T>
Outcome<T> parsed_text(KeySpec const& key, DocumentValue const& value, Parsed<T> (*parse_text)(std::string_view)) {
    if (value.kind != DocumentValue::Kind::text) return {{}, wrong_kind(key, value)};
    auto parsed = parse_text(value.text);
    if (parsed.value) return {std::move(parsed.value), {}};
    return {{},
            Trouble{parsed.unit_is_wrong ? &file_bad_unit : &file_bad_value,
                    fmt::format("cannot be read: {}", parsed.problem),
                    fmt::format("write `{} = {}`", key.name, key.example)}};
}

template <>
inline Outcome<Dimensions> value_of(KeySpec const& key, DocumentValue const& value) {
    return parsed_text(key, value, parse_dimensions);
}

template <>
inline Outcome<Price> value_of(KeySpec const& key, DocumentValue const& value) {
    return parsed_text(key, value, parse_price);
}

template <>
inline Outcome<bool> value_of(KeySpec const& key, DocumentValue const& value) {
    if (value.kind != DocumentValue::Kind::boolean) return {{}, wrong_kind(key, value)};
    return {value.boolean, {}};
}

template <>
inline Outcome<Date> value_of(KeySpec const& key, DocumentValue const& value) {
    if (value.kind != DocumentValue::Kind::date) return {{}, wrong_kind(key, value)};
    return {value.date, {}};
}

template <>
inline Outcome<int> value_of(KeySpec const& key, DocumentValue const& value) {
    if (value.kind != DocumentValue::Kind::integer) return {{}, wrong_kind(key, value)};
    if (!key.range.holds(static_cast<double>(value.integer)))
        return {
            {},
            Trouble{&file_bad_value,
                    fmt::format("is {}; allowed is {}", value.integer, internal::key_words::range_text<int>(key.range)),
                    fmt::format("correct the value, as in `{} = {}`", key.name, key.example)}};
    return {static_cast<int>(value.integer), {}};
}

// The place of a word among the choices of its key.
inline Outcome<std::size_t> choice_of(KeySpec const& key, DocumentValue const& value) {
    if (value.kind != DocumentValue::Kind::text) return {{}, wrong_kind(key, value)};
    for (std::size_t i = 0; i < key.choices.size(); ++i)
        if (key.choices[i] == value.text) return {i, {}};
    auto const near = closest(value.text, key.choices);
    return {
        {},
        Trouble{&file_bad_value, fmt::format("is {}; allowed is {}", shown(value), listed(key.choices)),
                near ? fmt::format("did you mean `{}`?", *near) : fmt::format("write one of {}", listed(key.choices))}};
}

template <>
inline Outcome<Chemistry> value_of(KeySpec const& key, DocumentValue const& value) {
    auto word = choice_of(key, value);
    if (!word.value) return {{}, std::move(word.trouble)};
    return {static_cast<Chemistry>(*word.value), {}};
}

template <>
inline Outcome<SpeedControl> value_of(KeySpec const& key, DocumentValue const& value) {
    auto word = choice_of(key, value);
    if (!word.value) return {{}, std::move(word.trouble)};
    return {static_cast<SpeedControl>(*word.value), {}};
}

template <>
inline Outcome<SelectorPosition> value_of(KeySpec const& key, DocumentValue const& value) {
    auto word = choice_of(key, value);
    if (!word.value) return {{}, std::move(word.trouble)};
    return {static_cast<SelectorPosition>(*word.value), {}};
}

template <>
inline Outcome<Role> value_of(KeySpec const& key, DocumentValue const& value) {
    auto word = choice_of(key, value);
    if (!word.value) return {{}, std::move(word.trouble)};
    return {static_cast<Role>(*word.value), {}};
}

template <>
inline Outcome<ChargerKind> value_of(KeySpec const& key, DocumentValue const& value) {
    auto word = choice_of(key, value);
    if (!word.value) return {{}, std::move(word.trouble)};
    return {static_cast<ChargerKind>(*word.value), {}};
}

template <>
inline Outcome<Since> value_of(KeySpec const& key, DocumentValue const& value) {
    auto word = choice_of(key, value);
    if (!word.value) return {{}, std::move(word.trouble)};
    return {static_cast<Since>(*word.value), {}};
}

template <>
inline Outcome<Level> value_of(KeySpec const& key, DocumentValue const& value) {
    auto word = choice_of(key, value);
    if (!word.value) return {{}, std::move(word.trouble)};
    return {static_cast<Level>(*word.value), {}};
}

// What is wrong with a value, whatever the key holds.
inline std::optional<Trouble> trouble_with(KeySpec const& key, DocumentValue const& value) {
    switch (key.kind) {
    case KeyKind::text:
    case KeyKind::terminal:
    case KeyKind::model:
        return value_of<std::string>(key, value).trouble;
    case KeyKind::texts:
        return value_of<std::vector<std::string>>(key, value).trouble;
    case KeyKind::trips:
        return value_of<std::vector<TripLimit>>(key, value).trouble;
    case KeyKind::dimensions:
        return value_of<Dimensions>(key, value).trouble;
    case KeyKind::price:
        return value_of<Price>(key, value).trouble;
    case KeyKind::choice:
        return choice_of(key, value).trouble;
    case KeyKind::integer:
        return value_of<int>(key, value).trouble;
    case KeyKind::boolean:
        return value_of<bool>(key, value).trouble;
    case KeyKind::date:
        return value_of<Date>(key, value).trouble;
    default:
        return with_quantity(key.kind,
                             [&](auto type) { return value_of<typename decltype(type)::type>(key, value).trouble; });
    }
}

} // namespace bankwright::internal::reader
