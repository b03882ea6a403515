// Decimal to double, rounded once: a unit's factor is multiplied in digit by digit, and std::from_chars takes the
// nearest double. std::strtod and streams depend on a locale.
#pragma once

#include "bankwright/text/decimal.hpp"

#include <algorithm>
#include <cfloat>
#include <charconv>
#include <cmath>
#include <system_error>
#include <vector>

namespace bankwright {

namespace internal::decimal {

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }

// A double or a midpoint of two needs at most 768 significant digits; one more that is not zero stands for all the
// rest.
inline constexpr std::size_t most_digits = 800;
inline constexpr int largest_exponent = 100'000; // far beyond any double, far below overflow of an int

struct DigitRun {
    std::size_t end = 0;
    bool any = false;
};

// Appends the digits from `at` to number.digits; each dropped or fractional one moves the exponent.
inline DigitRun read_digits(std::string_view text, std::size_t at, bool fraction, Decimal& number,
                            long long& exponent) {
    DigitRun run{at, false};
    for (; run.end < text.size() && is_digit(text[run.end]); ++run.end) {
        run.any = true;
        char const digit = text[run.end];
        bool const leading_zero = number.digits.empty() && digit == '0';
        if (fraction) --exponent;
        if (leading_zero) continue;
        if (number.digits.size() < most_digits) {
            number.digits += digit;
        } else {
            ++exponent;
            if (digit != '0' && number.digits.back() == '0') number.digits.back() = '1';
        }
    }
    return run;
}

inline double power_of_ten(int n) { // exact up to 22
    double power = 1.0;
    for (int i = 0; i < n; ++i)
        power *= 10.0;
    return power;
}

// Numbers and powers that a double holds exactly need one rounding only: the product's or the quotient's.
inline std::optional<double> nearest_simple(Decimal const& number, std::uint64_t factor, int exponent) {
    if (FLT_EVAL_METHOD != 0 || number.digits.size() > 15 || std::abs(exponent) > 22) return std::nullopt;
    std::uint64_t mantissa = 0;
    for (char const c : number.digits)
        mantissa = mantissa * 10 + static_cast<std::uint64_t>(c - '0');
    if (mantissa > (std::uint64_t{1} << 53) / factor) return std::nullopt;
    auto const exact = static_cast<double>(mantissa * factor);
    return exponent < 0 ? exact / power_of_ten(-exponent) : exact * power_of_ten(exponent);
}

// The digits of number x factor, by long multiplication.
inline std::string product_of(std::string_view number, std::uint64_t factor) {
    auto const other = std::to_string(factor);
    std::vector<int> sums(number.size() + other.size(), 0); // the first for the last carry
    for (std::size_t i = 0; i < number.size(); ++i)
        for (std::size_t j = 0; j < other.size(); ++j)
            sums[i + j + 1] += (number[i] - '0') * (other[j] - '0');
    std::string digits(sums.size(), '0');
    for (std::size_t k = sums.size(); k-- > 0;) {
        if (k > 0) sums[k - 1] += sums[k] / 10;
        digits[k] = static_cast<char>('0' + sums[k] % 10);
    }
    return digits;
}

// std::from_chars rounds once, however many digits there are. None: too large for a double.
inline std::optional<double> nearest_exact(Decimal const& number, std::uint64_t factor, int exponent) {
    auto const text = product_of(number.digits, factor) + 'e' + std::to_string(exponent);
    double value = 0.0;
    auto const read = std::from_chars(text.data(), text.data() + text.size(), value);
    if (read.ec == std::errc()) return value;
    return static_cast<int>(number.digits.size()) + exponent > 0 ? std::nullopt : std::optional(0.0);
}

} // namespace internal::decimal

BANKWRIGHT_INLINE std::optional<Decimal> read_decimal(std::string_view& text) {
    Decimal number;
    long long exponent = 0;
    std::size_t at = 0;
    if (at < text.size() && (text[at] == '+' || text[at] == '-')) number.negative = text[at++] == '-';
    auto const whole = internal::decimal::read_digits(text, at, false, number, exponent);
    bool any = whole.any;
    at = whole.end;
    if (at < text.size() && text[at] == '.') {
        auto const fraction = internal::decimal::read_digits(text, at + 1, true, number, exponent);
        any = any || fraction.any;
        if (any) at = fraction.end;
    }
    if (!any) return std::nullopt;
    if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
        std::size_t digits = at + 1;
        bool const negative = digits < text.size() && text[digits] == '-';
        if (digits < text.size() && (text[digits] == '+' || text[digits] == '-')) ++digits;
        long long written = 0;
        std::size_t end = digits;
        for (; end < text.size() && internal::decimal::is_digit(text[end]); ++end)
            written = std::min<long long>(written * 10 + (text[end] - '0'), 1'000'000'000'000);
        if (end > digits) {
            exponent += negative ? -written : written;
            at = end;
        }
    }
    while (!number.digits.empty() && number.digits.back() == '0') {
        number.digits.pop_back();
        ++exponent;
    }
    number.exponent = static_cast<int>(
        std::clamp<long long>(exponent, -internal::decimal::largest_exponent, internal::decimal::largest_exponent));
    text.remove_prefix(at);
    return number;
}

BANKWRIGHT_INLINE std::optional<double> nearest_double(Decimal const& number, std::uint64_t factor, int power) {
    double const sign = number.negative ? -1.0 : 1.0;
    if (number.digits.empty() || factor == 0) return sign * 0.0;
    int const exponent = number.exponent + power;
    // The value lies between 10^(magnitude-1) and 10^(magnitude+20): the factor has at most 20 digits.
    int const magnitude = static_cast<int>(number.digits.size()) + exponent;
    if (magnitude > 310) return std::nullopt;
    if (magnitude < -350) return sign * 0.0;
    if (auto const simple = internal::decimal::nearest_simple(number, factor, exponent)) return sign * *simple;
    auto const nearest = internal::decimal::nearest_exact(number, factor, exponent);
    if (!nearest) return std::nullopt;
    return sign * *nearest;
}

} // namespace bankwright
