#pragma once

#include "bankwright/text/decimal.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <initializer_list>

#include <fmt/format.h>

namespace bankwright::printing {

namespace internal {

// "12.71" from 12.7096: rounded to so many significant digits, no exponent between 1e-4 and 1e6, no -0.
inline std::string rounded(double number, int digits = 4) {
    if (!std::isfinite(number)) return fmt::format("{}", number);
    if (number == 0.0) return "0";
    auto const text = fmt::format("{:.{}e}", number, digits - 1);
    std::string_view rest = text;
    auto const decimal = read_decimal(rest);
    double const nearest = nearest_double(*decimal).value_or(number);
    double const size = std::abs(nearest);
    if (size < 1e-4 || size >= 1e6) return fmt::format("{:.{}g}", nearest, digits);
    return fmt::format("{:.{}f}", nearest, decimal->exponent < 0 ? -decimal->exponent : 0);
}

struct Step {
    double from; // smallest value that is shown in this unit
    double size; // SI in one unit
    std::string_view unit;
};

// Steps from the largest down. What rounds up to the next step is shown there.
inline std::string stepped(double si, std::initializer_list<Step> steps) {
    double const size = std::abs(si);
    for (auto const& step : steps) {
        bool const last = &step == steps.end() - 1;
        if (last || (size > 0.0 && size >= step.from * 0.99995))
            return fmt::format("{} {}", rounded(si / step.size), step.unit);
    }
    return {};
}

inline std::string engineering(double si, std::string_view unit) {
    double const size = std::abs(si);
    struct Scale {
        double from;
        double by;
        std::string_view prefix;
    };
    for (auto const& [from, by, prefix] : {Scale{1e6, 1e-6, "M"}, Scale{1e3, 1e-3, "k"}, Scale{1.0, 1.0, ""},
                                           Scale{1e-3, 1e3, "m"}, Scale{1e-6, 1e6, "u"}})
        if (size >= from * 0.99995 && size < 1e9) return fmt::format("{} {}{}", rounded(si * by), prefix, unit);
    return fmt::format("{} {}", rounded(si), unit);
}

inline std::string duration(double seconds) {
    double const size = std::abs(seconds);
    if (size < 0.99995) return engineering(seconds, "s");
    if (!(size < 1e9) || size < 59.995) return fmt::format("{} s", rounded(seconds));
    std::string const sign = seconds < 0 ? "-" : "";
    auto const pair = [&](double lower, long long per_upper, std::string_view upper_unit, std::string_view lower_unit) {
        auto const count = std::llround(size / lower);
        auto const text = fmt::format("{}{} {}", sign, count / per_upper, upper_unit);
        return count % per_upper == 0 ? text : fmt::format("{} {} {}", text, count % per_upper, lower_unit);
    };
    if (size < 3599.5) return pair(1.0, 60, "min", "s");
    if (size < 100 * 3600.0 - 30.0) return pair(60.0, 60, "h", "min");
    return pair(3600.0, 24, "d", "h");
}

inline int significant_digits(std::string_view text) {
    text.remove_prefix(std::min(text.find_first_of("123456789"), text.size()));
    auto count = static_cast<int>(std::count_if(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; }));
    if (text.find('.') == std::string_view::npos)
        while (count > 0 && text.back() == '0')
            text.remove_suffix(1), --count;
    return count;
}

// "7 in", "12 in", "17 ft", "5 ft 6 in": short conductors are measured in inches, longer ones in feet.
inline std::string feet_and_inches(double inches) {
    if (inches < 36.0) return fmt::format("{} in", rounded(inches));
    auto const feet = std::floor(inches / 12.0 + 1e-9);
    auto const rest = inches - 12.0 * feet;
    return rest < 1e-6 ? fmt::format("{} ft", rounded(feet)) : fmt::format("{} ft {} in", rounded(feet), rounded(rest));
}

// A quantity does not keep the unit that it was written in. A length of whole or half inches that takes more digits in
// meters was written in feet or inches, and is printed so.
inline std::string length(double meters) {
    auto const metric = stepped(meters, {{0.1, 1.0, "m"}, {0.0, 1e-3, "mm"}});
    auto const inches = meters / 0.0254;
    auto const halves = std::round(2.0 * inches);
    if (!(halves >= 1.0) || inches > 12e3 || std::abs(2.0 * inches - halves) > 1e-6) return metric;
    auto const imperial = feet_and_inches(0.5 * halves);
    return significant_digits(imperial) < significant_digits(fmt::format("{:.7g}", meters)) ? imperial : metric;
}

} // namespace internal

BANKWRIGHT_INLINE std::string people(UnitTable const& table, double si) {
    auto const is = [&](UnitTable const& other) { return &table == &other; };
    if (is(voltage_units)) return internal::engineering(si, "V");
    if (is(current_units)) return internal::engineering(si, "A");
    if (is(resistance_units)) return internal::engineering(si, "ohm");
    if (is(power_units)) return internal::engineering(si, "W");
    if (is(resistance_per_length_units)) return internal::stepped(si, {{1.0, 1.0, "ohm/m"}, {0.0, 1e-3, "mohm/m"}});
    if (is(voltage_per_temperature_units)) return internal::stepped(si, {{0.0, 1e-3, "mV/K"}});
    if (is(energy_units)) return internal::stepped(si, {{3.6e6, 3.6e6, "kWh"}, {360.0, 3600.0, "Wh"}, {0.0, 1.0, "J"}});
    if (is(charge_units)) return internal::stepped(si, {{0.0, 3600.0, "Ah"}});
    if (is(length_units)) return internal::length(si);
    if (is(area_units)) return internal::stepped(si, {{0.1, 1.0, "m2"}, {0.0, 1e-6, "mm2"}});
    if (is(duration_units)) return internal::duration(si);
    if (is(mass_units)) return internal::stepped(si, {{1.0, 1.0, "kg"}, {0.0, 1e-3, "g"}});
    if (is(force_units)) return internal::stepped(si, {{0.0, 1.0, "N"}});
    if (is(torque_units)) return internal::stepped(si, {{0.0, 1.0, "N m"}});
    if (is(angular_speed_units)) return internal::stepped(si, {{0.0, 0.10471975511965977, "rpm"}});
    if (is(let_through_units)) return internal::stepped(si, {{0.0, 1.0, "A2 s"}});
    if (is(temperature_difference_units)) return internal::stepped(si, {{0.0, 1.0, "K"}});
    if (is(fraction_units)) return internal::stepped(si, {{0.0, 0.01, "%"}});
    return fmt::format("{} SI", internal::rounded(si));
}

BANKWRIGHT_INLINE std::string people(Temperature value) {
    double const tenths = std::round(in_celsius(value) * 10.0) / 10.0; // no thermometer on a boat reads finer
    return fmt::format("{} degC", tenths == 0.0 ? 0.0 : tenths);
}

BANKWRIGHT_INLINE std::string people(WireSize value) {
    if (!value.gauge()) return people(area_units, value.area().value());
    int const number = value.gauge()->number;
    auto const scale = value.is_sae() ? "SAE" : "AWG";
    return number > 0 ? fmt::format("{} {}", number, scale) : fmt::format("{}/0 {}", 1 - number, scale);
}

namespace internal {

// Plain decimals where they are short, else with an exponent.
inline std::string plain(Decimal const& number) {
    std::string text = number.negative ? "-" : "";
    int const digits = static_cast<int>(number.digits.size());
    int const point = digits + number.exponent; // digits before the point
    if (digits == 0) return text + "0";
    if (point > 9 || point < -5) return text + fmt::format("{}e{}", number.digits, number.exponent);
    if (number.exponent >= 0) return text + number.digits + std::string(static_cast<std::size_t>(number.exponent), '0');
    if (point > 0) return text + std::string(number.digits).insert(static_cast<std::size_t>(point), 1, '.');
    return text + "0." + std::string(static_cast<std::size_t>(-point), '0') + number.digits;
}

inline Decimal decimal_of(std::string_view text) { return read_decimal(text).value_or(Decimal{}); }

inline bool same_bits(double a, double b) { return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b); }

// The candidate with the fewest digits; the first of several.
class Shortest {
public:
    void offer(Decimal const& number, std::string_view prefix, std::string_view unit) {
        auto text = plain(number);
        if (!best_.empty() && text.size() >= length_) return;
        length_ = text.size();
        best_ = fmt::format("{} {}{}", text, prefix, unit);
    }
    std::string const& text() const { return best_; }

private:
    std::string best_;
    std::size_t length_ = 0;
};

inline bool is_ascii(std::string_view text) {
    for (char const c : text)
        if (static_cast<unsigned char>(c) >= 0x80) return false;
    return true;
}

} // namespace internal

// A unit that is a power of ten from SI always has a candidate, since the shortest decimal of the SI value just moves
// its point; the others are tried with 15 to 17 digits.
BANKWRIGHT_INLINE std::string exact(UnitTable const& table, double si) {
    if (!std::isfinite(si)) return fmt::format("{} {}", si, table.units.front().name);
    internal::Shortest shortest;
    for (auto const& unit : table.units) {
        if (!internal::is_ascii(unit.name)) continue;
        if (unit.factor == 1) {
            auto number = internal::decimal_of(fmt::format("{}", si));
            number.exponent -= unit.power;
            shortest.offer(number, "", unit.name);
            if (unit.name != "ohm") continue;
            number.exponent += 3;
            shortest.offer(number, "m", unit.name);
            continue;
        }
        double const size = nearest_double(Decimal{false, "1", unit.power}, unit.factor).value_or(1.0);
        for (int digits = 15; digits <= 17; ++digits) {
            auto const number = internal::decimal_of(fmt::format("{:.{}g}", si / size, digits));
            auto const back = nearest_double(number, unit.factor, unit.power);
            if (!back || !internal::same_bits(*back, si)) continue;
            shortest.offer(number, "", unit.name);
            break;
        }
    }
    return shortest.text();
}

BANKWRIGHT_INLINE std::string exact(Temperature value) {
    double const kelvins = value.value();
    if (!std::isfinite(kelvins)) return fmt::format("{} K", kelvins);
    internal::Shortest shortest;
    auto const offer = [&](double degrees, std::string_view unit) {
        for (int digits = 15; digits <= 17; ++digits) {
            auto const number = internal::decimal_of(fmt::format("{:.{}g}", degrees, digits));
            auto const back = parse<Temperature>(fmt::format("{} {}", internal::plain(number), unit));
            if (!back.value || !internal::same_bits(back.value->value(), kelvins)) continue;
            shortest.offer(number, "", unit);
            return;
        }
    };
    offer(in_celsius(value), "degC");
    offer(in_celsius(value) * 1.8 + 32.0, "degF");
    offer(kelvins, "K");
    return shortest.text();
}

BANKWRIGHT_INLINE std::string exact(WireSize value) {
    return value.gauge() ? people(value) : exact(area_units, value.area().value());
}

} // namespace bankwright::printing
