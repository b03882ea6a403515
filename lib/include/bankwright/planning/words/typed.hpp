// Numbers and units as people type them: upper or lower case, a blank or none, plural or short, a bare number.
#pragma once

#include "bankwright/text/escape.hpp"
#include "bankwright/units/parse.hpp"

#include <cctype>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::typed {

struct Token {
    std::string text; // a number as typed, or a word in lower case
    bool is_number = false;
};

inline bool is_digit(char c) { return (c >= '0' && c <= '9') || c == '.'; }

// Numbers, words, and the signs that stand for a unit.
inline std::vector<Token> tokens(std::string_view text) {
    std::vector<Token> all;
    bool joined = false; // to the token before
    for (char const c : text) {
        bool const number = is_digit(c);
        bool const blank = c == ' ' || c == '\t';
        bool const sign = c == '\'' || c == '"' || c == '%' || c == ':' || c == ',';
        if (!blank) {
            if (!joined || sign || all.back().is_number != number) all.push_back({{}, number});
            all.back().text += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        }
        joined = !blank && !sign;
    }
    return all;
}

struct Spelling {
    std::string_view word;
    std::string_view unit; // as parse() knows it
};

inline constexpr Spelling volts[] = {{"v", "V"}, {"volt", "V"}, {"volts", "V"}};
inline constexpr Spelling amperes[] = {{"a", "A"}, {"amp", "A"}, {"amps", "A"}, {"ampere", "A"}, {"amperes", "A"}};
inline constexpr Spelling draws[] = {{"a", "A"},       {"amp", "A"},    {"amps", "A"},        {"ampere", "A"},
                                     {"amperes", "A"}, {"w", "W"},      {"watt", "W"},        {"watts", "W"},
                                     {"kw", "kW"},     {"hp", "hp"},    {"horsepower", "hp"}, {"lb", "lbf"},
                                     {"lbs", "lbf"},   {"lbf", "lbf"},  {"pound", "lbf"},     {"pounds", "lbf"},
                                     {"n", "N"},       {"newton", "N"}, {"newtons", "N"}};
inline constexpr Spelling lengths[] = {{"ft", "ft"},    {"foot", "ft"},   {"feet", "ft"}, {"'", "ft"}, {"in", "in"},
                                       {"inch", "in"},  {"inches", "in"}, {"\"", "in"},   {"m", "m"},  {"meter", "m"},
                                       {"meters", "m"}, {"cm", "cm"},     {"mm", "mm"}};
inline constexpr Spelling times[] = {
    {"h", "h"},        {"hr", "h"},        {"hrs", "h"}, {"hour", "h"}, {"hours", "h"}, {"min", "min"}, {"mins", "min"},
    {"minute", "min"}, {"minutes", "min"}, {"m", "min"}, {"d", "d"},    {"day", "d"},   {"days", "d"},  {":", "h"}};
inline constexpr Spelling shares[] = {{"%", "%"}, {"percent", "%"}};
inline constexpr Spelling capacities[] = {{"ah", "Ah"}};

inline std::optional<std::string_view> unit_for(std::span<Spelling const> spellings, std::string_view word) {
    for (auto const& spelling : spellings)
        if (spelling.word == word) return spelling.unit;
    return std::nullopt;
}

// "20feet" as "20 ft", "1:30" as "1 h 30 min"; empty, with a problem, for what is no such thing.
struct Spelled {
    std::string text;
    std::string problem;
};
inline Spelled spelled(std::string_view text, std::span<Spelling const> spellings, std::string_view bare,
                       std::string_view example) {
    auto const all = tokens(text);
    auto const refuse = [&](std::string const& why) {
        return Spelled{{}, fmt::format("`{}` {}; write it as in `{}`", terminal_safe(text), why, example)};
    };
    if (all.empty()) return refuse("says nothing");
    std::string out;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].text == ",") return refuse("holds a comma; decimals have a point");
        if (!all[i].is_number)
            return refuse(i == 0 ? "does not begin with a number"
                                 : fmt::format("has `{}` too many", terminal_safe(all[i].text)));
        bool const has_unit = i + 1 < all.size() && !all[i + 1].is_number;
        auto const unit = has_unit ? unit_for(spellings, all[i + 1].text) : std::optional(i == 0 ? bare : "min");
        if (!unit) return refuse(fmt::format("has an unknown unit, `{}`", terminal_safe(all[i + 1].text)));
        out += fmt::format("{}{} {}", out.empty() ? "" : " ", all[i].text, *unit);
        if (has_unit) ++i;
    }
    return {out, {}};
}

} // namespace bankwright::internal::typed
