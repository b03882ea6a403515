// How a text that is no quantity is told to its author: what was found, then what was expected. Included by
// parse_inl.hpp.
#pragma once

#include "bankwright/text/closest.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/parsed.hpp"
#include "bankwright/units/unit_spelling.hpp"

#include <array>
#include <string>
#include <string_view>

#include <fmt/format.h>

namespace bankwright::parsing {

// Blanks, tabs, and the spaces that typesetting puts before a unit: no-break, narrow no-break, thin.
inline constexpr std::array<std::string_view, 5> blanks{" ", "\t", "\u00A0", "\u202F", "\u2009"};

inline std::string_view without_blanks_before(std::string_view text) {
    for (bool again = true; again;) {
        again = false;
        for (auto const blank : blanks)
            if (text.substr(0, blank.size()) == blank) {
                text.remove_prefix(blank.size());
                again = true;
            }
    }
    return text;
}

inline std::string_view trimmed(std::string_view text) {
    text = without_blanks_before(text);
    for (bool again = true; again;) {
        again = false;
        for (auto const blank : blanks)
            if (text.size() >= blank.size() && text.substr(text.size() - blank.size()) == blank) {
                text.remove_suffix(blank.size());
                again = true;
            }
    }
    return text;
}

inline std::string quoted(std::string_view text) {
    std::string shown;
    for (int count = 0; count < 40 && !text.empty(); ++count) {
        auto const point = first_code_point(text);
        shown += terminal_safe(point, text.substr(0, point.length));
        text.remove_prefix(point.length);
    }
    return '`' + shown + (text.empty() ? "`" : "...`");
}

inline Parsed<double> problem(UnitTable const& table, bool unit_is_wrong, std::string_view found) {
    return {std::nullopt, fmt::format("{}; expected {} such as \"{}\"", found, table.noun, table.example),
            unit_is_wrong};
}

inline Parsed<double> bad_number(UnitTable const& table, std::string_view text) {
    if (text.empty()) return problem(table, false, "the value is empty");
    return problem(table, false, quoted(text) + " does not begin with a number");
}

// `rest` follows the number in `text` and is no unit of the table.
inline Parsed<double> bad_unit(UnitTable const& table, std::string_view text, std::string_view rest) {
    if (rest.empty()) return problem(table, true, quoted(text) + " has no unit");
    auto const digits = text.substr(text.front() == '+' || text.front() == '-' ? 1 : 0, 2);
    if (digits == "0x" || digits == "0X") return problem(table, false, quoted(text) + " is not a decimal number");
    if (rest.front() == ',')
        return problem(table, false, quoted(text) + " has a comma in its number, where only a decimal point is read");
    if (rest.front() == '_' || rest.front() == '.' || (rest.front() >= '0' && rest.front() <= '9'))
        return problem(table, false, quoted(text) + " is not one number and a unit");
    // A letter that is also a unit of another quantity (25 C) is more likely the slip than the other quantity.
    auto const near = suggest_unit(table, rest);
    bool const likely = near && same_letters(*near, rest);
    bool const word = near && closest(rest, {*near}) == std::nullopt;
    if (!likely && !word)
        for (auto const* other : every_unit_table)
            if (find_unit(*other, rest))
                return problem(table, true, fmt::format("{} is {}", quoted(text), other->noun));
    auto const meant = near ? fmt::format(" (did you mean `{}`?)", *near) : std::string();
    return problem(table, true, fmt::format("{} has the unknown unit {}{}", quoted(text), quoted(rest), meant));
}

} // namespace bankwright::parsing
