// Bodies of unit_spelling.hpp.
#pragma once

#include "bankwright/text/closest.hpp"
#include "bankwright/units/unit_spelling.hpp"

#include <array>

namespace bankwright {

namespace internal {

struct UnitWord {
    std::string_view word;
    std::string_view unit;
};

// What people write and parse() does not take; upper and lower case are the same here.
inline constexpr std::array<UnitWord, 63> unit_words{{
    {"volt", "V"},         {"volts", "V"},      {"vdc", "V"},        {"v dc", "V"},       {"amp", "A"},
    {"amps", "A"},         {"ampere", "A"},     {"amperes", "A"},    {"adc", "A"},        {"a dc", "A"},
    {"cca", "A"},          {"mca", "A"},        {"r", "ohm"},        {"ohms", "ohm"},     {"milliohm", "mohm"},
    {"milliohms", "mohm"}, {"watt", "W"},       {"watts", "W"},      {"joule", "J"},      {"joules", "J"},
    {"amp hours", "Ah"},   {"amp hour", "Ah"},  {"a.h", "Ah"},       {"a h", "Ah"},       {"w h", "Wh"},
    {"coulomb", "C"},      {"\"", "in"},        {"''", "in"},        {"inch", "in"},      {"inches", "in"},
    {"'", "ft"},           {"foot", "ft"},      {"feet", "ft"},      {"metre", "m"},      {"metres", "m"},
    {"meter", "m"},        {"meters", "m"},     {"mm^2", "mm2"},     {"sqmm", "mm2"},     {"sq mm", "mm2"},
    {"qmm", "mm2"},        {"mcm", "kcmil"},    {"sec", "s"},        {"second", "s"},     {"seconds", "s"},
    {"mins", "min"},       {"minute", "min"},   {"minutes", "min"},  {"hr", "h"},         {"hrs", "h"},
    {"hour", "h"},         {"hours", "h"},      {"day", "d"},        {"days", "d"},       {"lbs", "lb"},
    {"lb in", "lbf in"},   {"in lb", "lbf in"}, {"lb ft", "lbf ft"}, {"ft lb", "lbf ft"}, {"c", "degC"},
    {"f", "degF"},         {"pct", "%"},        {"percent", "%"},
}};

} // namespace internal

BANKWRIGHT_INLINE std::optional<FoundUnit> find_unit(UnitTable const& table, std::string_view name) {
    for (auto const& unit : table.units)
        if (unit.name == name) return FoundUnit{&unit, 0};
    // A motor's thrust is told in pounds, and everybody means the force.
    if (name == "lb" || name == "lbs")
        for (auto const& unit : table.units)
            if (unit.name == "lbf") return FoundUnit{&unit, 0};
    for (auto const& unit : table.units)
        for (auto const& prefix : prefixes)
            if (unit.prefixes && name.size() == prefix.name.size() + unit.name.size() &&
                name.substr(0, prefix.name.size()) == prefix.name && name.substr(prefix.name.size()) == unit.name)
                return FoundUnit{&unit, prefix.power};
    return std::nullopt;
}

BANKWRIGHT_INLINE std::vector<std::string> unit_spellings(UnitTable const& table) {
    std::vector<std::string> all;
    for (auto const& unit : table.units)
        all.emplace_back(unit.name);
    for (auto const& unit : table.units)
        if (unit.prefixes)
            for (auto const& prefix : prefixes)
                all.push_back(std::string(prefix.name) += unit.name);
    return all;
}

BANKWRIGHT_INLINE std::optional<std::string> suggest_unit(UnitTable const& table, std::string_view written) {
    auto const spellings = unit_spellings(table);
    for (auto const& [word, unit] : internal::unit_words)
        if (same_letters(word, written))
            for (auto const& spelling : spellings)
                if (spelling == unit) return spelling;
    return closest(written, spellings);
}

} // namespace bankwright
