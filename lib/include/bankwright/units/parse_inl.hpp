#pragma once

#include "bankwright/text/decimal.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/units/parsing/parse_problems.hpp"
#include "bankwright/units/unit_spelling.hpp"

#include <cmath>
#include <limits>
#include <vector>

#include <fmt/format.h>

namespace bankwright {

namespace parsing {

namespace internal {

// Where the next term of a sum begins: at a digit after a blank.
inline std::size_t end_of_term(std::string_view rest) {
    for (std::size_t i = 1; i < rest.size(); ++i) {
        bool const digit = rest[i] >= '0' && rest[i] <= '9';
        if (digit && trimmed(rest.substr(0, i)).size() < i) return i;
    }
    return rest.size();
}

inline double size_of(FoundUnit found) {
    return nearest_double(Decimal{false, "1", found.prefix + found.unit->power}, found.unit->factor).value_or(0.0);
}

struct Term {
    Decimal number;
    FoundUnit unit;
};

// The sum in its last and smallest unit, where a term that is whole stays whole: 5 ft 6 in are 66 in exactly.
inline std::optional<Decimal> sum_in_last_unit(std::vector<Term> const& terms) {
    double sum = 0.0;
    for (auto const& term : terms) {
        double const times = std::round(size_of(term.unit) / size_of(terms.back().unit));
        sum += nearest_double(term.number).value_or(std::numeric_limits<double>::infinity()) * times;
    }
    auto const text = fmt::format("{}", sum);
    std::string_view rest = text;
    return read_decimal(rest);
}

} // namespace internal

BANKWRIGHT_INLINE Parsed<double> number_in(UnitTable const& table, std::string_view text) {
    text = trimmed(text);
    std::vector<internal::Term> terms;
    auto rest = text;
    do {
        auto const number = read_decimal(rest);
        if (!number) return bad_number(table, text);
        rest = without_blanks_before(rest);
        auto const end = table.sums ? internal::end_of_term(rest) : rest.size();
        auto const unit = find_unit(table, trimmed(rest.substr(0, end)));
        if (!unit) return bad_unit(table, text, rest);
        rest.remove_prefix(end);
        if (number->negative && !(terms.empty() && rest.empty()))
            return problem(table, false, quoted(text) + " is a sum with a minus sign in it");
        if (!terms.empty()) {
            double const times = internal::size_of(terms.back().unit) / internal::size_of(*unit);
            if (!(times > 1.5) || std::abs(times - std::round(times)) > 1e-9)
                return problem(table, false,
                               quoted(text) + " is a sum whose units do not divide each other, larger first");
        }
        terms.push_back({*number, *unit});
    } while (!rest.empty());
    auto const number = terms.size() == 1 ? terms[0].number : internal::sum_in_last_unit(terms);
    auto const& [unit, prefix] = terms.back().unit;
    auto const value = number ? nearest_double(*number, unit->factor, unit->power + prefix) : std::nullopt;
    if (!value) return problem(table, false, quoted(text) + " is too large a number");
    return {*value, {}, false};
}

BANKWRIGHT_INLINE Parsed<Temperature> temperature(std::string_view text) {
    text = trimmed(text);
    auto const failed = [](Parsed<double> const& why) {
        return Parsed<Temperature>{std::nullopt, why.problem, why.unit_is_wrong};
    };
    auto rest = text;
    auto const number = read_decimal(rest);
    if (!number) return failed(bad_number(temperature_units, text));
    rest = without_blanks_before(rest);
    auto const unit = find_unit(temperature_units, rest);
    if (!unit) return failed(bad_unit(temperature_units, text, rest));
    auto const degrees = nearest_double(*number);
    if (!degrees) return failed(problem(temperature_units, false, quoted(text) + " is too large a number"));
    auto const name = unit->unit->name;
    bool const is_celsius = name == "degC" || name == "\u00B0C" || name == "\u2103";
    auto const value = name == "K" ? kelvin_point(*degrees) : is_celsius ? celsius(*degrees) : fahrenheit(*degrees);
    if (value.value() < 0.0) return failed(problem(temperature_units, false, quoted(text) + " is below absolute zero"));
    return {value, {}, false};
}

} // namespace parsing

} // namespace bankwright

namespace bankwright::parsing {

namespace internal {

inline constexpr UnitTable wire_size_units{"a wire size", "6 AWG\" or \"16 mm2",
                                           bankwright::internal::unit_tables::area};

// "6" is 6, "1/0" and "0" are 0, "2/0" and "00" are -1, ... None where the text is not a gauge from 4/0 to 30.
inline std::optional<Awg> gauge_of(std::string_view number) {
    constexpr std::string_view zeros = "0000";
    if (!number.empty() && number.size() <= 4 && number == zeros.substr(0, number.size()))
        return Awg{1 - static_cast<int>(number.size())};
    if (number.size() == 3 && number.substr(1) == "/0" && number[0] >= '1' && number[0] <= '4')
        return Awg{1 - (number[0] - '0')};
    int gauge = 0;
    for (char const c : number) {
        if (c < '0' || c > '9' || gauge > 30) return std::nullopt;
        gauge = gauge * 10 + (c - '0');
    }
    if (number.empty() || number[0] == '0' || gauge > 30) return std::nullopt;
    return Awg{gauge};
}

} // namespace internal

BANKWRIGHT_INLINE Parsed<WireSize> wire_size(std::string_view text) {
    text = trimmed(text);
    auto const failed = [](Parsed<double> const& why) {
        return Parsed<WireSize>{std::nullopt, why.problem, why.unit_is_wrong};
    };
    auto const number = text.substr(0, text.find_first_not_of("0123456789/.+-"));
    auto const unit = without_blanks_before(text.substr(number.size()));
    if (!number.empty() && unit == "AWG") {
        if (auto const gauge = internal::gauge_of(number)) return {WireSize(*gauge), {}, false};
        return failed(problem(internal::wire_size_units, false, quoted(text) + " is not a gauge from 4/0 to 30 AWG"));
    }
    if (!number.empty() && unit == "SAE") {
        auto const size = internal::gauge_of(number);
        if (size && bankwright::area(Sae{size->number})) return {WireSize(Sae{size->number}), {}, false};
        return failed(problem(internal::wire_size_units, false,
                              quoted(text) + " is not an SAE size (18 to 1, but no odd one from 3, and 1/0 to 4/0)"));
    }
    if (!number.empty() && unit.empty())
        return failed(problem(internal::wire_size_units, true, quoted(text) + " has no unit"));
    if (!number.empty())
        for (std::string_view const word : {"AWG", "ga", "gauge", "AWG."})
            if (same_letters(unit, word)) {
                auto const meant =
                    fmt::format("{} has the unknown unit {} (did you mean `AWG`?)", quoted(text), quoted(unit));
                return failed(problem(internal::wire_size_units, true, meant));
            }
    auto const area = number_in(internal::wire_size_units, text);
    if (!area.value) return failed(area);
    if (!(*area.value > 0.0))
        return failed(problem(internal::wire_size_units, false, quoted(text) + " is not a cross-section above zero"));
    return {WireSize(Area::from_value(*area.value)), {}, false};
}

} // namespace bankwright::parsing
