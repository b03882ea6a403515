// How the table of keys says itself in words: ranges, choices and requirements, for messages, schema and reference
// alike.
#pragma once

#include "bankwright/config/key_kinds.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/units/print.hpp"

#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::key_words {

template <class T>
struct IsFraction : std::false_type {};
template <class Meaning>
struct IsFraction<Fraction<Meaning>> : std::true_type {};

// A value in the unit of Range.
template <class T>
double in_si(T const& value) {
    if constexpr (std::is_same_v<T, WireSize>)
        return value.area().value();
    else
        return value.value();
}

// Such a number as people read it.
template <class T>
std::string printed(double value) {
    if constexpr (std::is_same_v<T, int>)
        return fmt::format("{}", value);
    else if constexpr (std::is_same_v<T, Temperature>)
        return print(kelvin_point(value));
    else if constexpr (std::is_same_v<T, WireSize>)
        return print(value * si::square_meter);
    else if constexpr (IsFraction<T>::value)
        return print(T::of(value));
    else
        return print(T::from_value(value));
}

// "from 0 % to 100 %", "more than 0 V, at most 1000 V"
template <class T>
std::string range_text(Range const& range) {
    if (range.least == range.most) return printed<T>(range.least);
    if (range.above_least)
        return fmt::format("more than {}, at most {}", printed<T>(range.least), printed<T>(range.most));
    return fmt::format("from {} to {}", printed<T>(range.least), printed<T>(range.most));
}

// "`agm` or `gel`"
template <class Words>
std::string listed(Words const& words, std::string_view last = " or ") {
    std::string text;
    std::size_t left = words.size();
    for (std::string_view const word : words) {
        text += fmt::format("`{}`", word);
        --left;
        if (left > 0) text += left == 1 ? last : std::string_view(", ");
    }
    return text;
}

using Alternatives = std::vector<std::vector<std::string_view>>;

inline Alternatives alternatives_of(Requirement const& requirement) {
    auto text = requirement.alternatives;
    Alternatives alternatives(1);
    while (!text.empty()) {
        auto const end = text.find(' ') == std::string_view::npos ? text.size() : text.find(' ');
        auto const word = text.substr(0, end);
        if (word == "|")
            alternatives.emplace_back();
        else
            alternatives.back().push_back(word);
        text.remove_prefix(end == text.size() ? end : end + 1);
    }
    return alternatives;
}

// "`resistance`, or `size` and `length`"
inline std::string in_words(Alternatives const& alternatives, std::string_view between = ", or ") {
    std::string text;
    for (auto const& keys : alternatives) {
        if (!text.empty()) text += between;
        text += listed(keys, " and ");
    }
    return text;
}

// What a key allows, beyond its kind; empty where that says it all.
inline std::string allowed(KeySpec const& key) {
    if (key.kind == KeyKind::text && !key.choices.empty()) return "a text such as " + listed(key.choices);
    if (!key.choices.empty()) return listed(key.choices);
    if (!key.range.is_bounded()) return {};
    if (key.kind == KeyKind::integer) return range_text<int>(key.range);
    return with_quantity(key.kind, [&](auto type) { return range_text<typename decltype(type)::type>(key.range); });
}

} // namespace bankwright::internal::key_words
