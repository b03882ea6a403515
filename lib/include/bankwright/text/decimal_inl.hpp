// Decimal to double by exact long division. std::strtod and streams depend on a locale, and std::from_chars for doubles
// is missing from libc++ before 20.
#pragma once

#include "bankwright/text/big_natural.hpp"
#include "bankwright/text/decimal.hpp"

#include <algorithm>
#include <cfloat>
#include <cmath>

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

inline BigNatural digits_of(std::string_view digits) {
    BigNatural number;
    for (std::size_t at = 0; at < digits.size();) {
        std::uint32_t chunk = 0, scale = 1;
        for (std::size_t const end = std::min(at + 9, digits.size()); at < end; ++at) {
            chunk = chunk * 10 + static_cast<std::uint32_t>(digits[at] - '0');
            scale *= 10;
        }
        number.multiply_add(scale, chunk);
    }
    return number;
}

// Exact: writes the number as 2^binary x top / bottom with 1 <= top / bottom < 2 and divides bit by bit.
inline double nearest_by_division(Decimal const& number, std::uint64_t factor, int exponent) {
    BigNatural top = digits_of(number.digits), bottom(1);
    top.multiply(factor);
    (exponent < 0 ? bottom : top).multiply_by_power_of_five(std::abs(exponent));
    int binary = exponent; // of 10^e = 5^e x 2^e the second part
    int const shift = top.bit_length() - bottom.bit_length();
    (shift < 0 ? top : bottom).shift_left(std::abs(shift));
    binary += shift;
    if (compare(top, bottom) < 0) {
        top.shift_left(1);
        --binary;
    }
    int const bits = binary >= -1022 ? 53 : 53 - (-1022 - binary); // fewer below the smallest normal double
    if (bits < 0) return 0.0;
    std::uint64_t quotient = 0;
    for (int i = 0; i < bits; ++i) {
        quotient <<= 1;
        if (compare(top, bottom) >= 0) {
            top.subtract(bottom);
            quotient |= 1;
        }
        top.shift_left(1);
    }
    int const against_half = compare(top, bottom);
    if (against_half > 0 || (against_half == 0 && quotient % 2 == 1)) ++quotient;
    return std::ldexp(static_cast<double>(quotient), binary - bits + 1);
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
    double const nearest = internal::decimal::nearest_by_division(number, factor, exponent);
    if (!std::isfinite(nearest)) return std::nullopt;
    return sign * nearest;
}

} // namespace bankwright
