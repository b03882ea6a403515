#pragma once

#include "bankwright/text/escape.hpp"
#include "bankwright/units/price.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace bankwright {
namespace internal::pricing {

inline constexpr std::size_t most_digits = 9;

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }
inline bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }

// Takes the digits off the front.
inline std::string_view digits_of(std::string_view& text) {
    auto const end = static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), is_digit) - text.begin());
    auto const digits = text.substr(0, end);
    text.remove_prefix(end);
    return digits;
}

inline void drop_blanks(std::string_view& text) {
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ')
        text.remove_suffix(1);
}

} // namespace internal::pricing

BANKWRIGHT_INLINE Parsed<Price> parse_price(std::string_view text) {
    using namespace internal::pricing;
    auto const refuse = [&](bool unit_is_wrong) {
        return Parsed<Price>{std::nullopt,
                             "`" + terminal_safe(text) +
                                 "`, expected an amount with at most two decimals and a currency of three capital "
                                 "letters such as `189.50 USD`",
                             unit_is_wrong};
    };
    auto rest = text;
    drop_blanks(rest);
    auto const whole = digits_of(rest);
    std::string_view part;
    bool const has_point = !rest.empty() && rest.front() == '.';
    if (has_point) {
        rest.remove_prefix(1);
        part = digits_of(rest);
    }
    if (whole.empty() || whole.size() > most_digits || part.size() > 2 || (has_point && part.empty()))
        return refuse(false);
    drop_blanks(rest);
    if (rest.size() != 3 || !std::all_of(rest.begin(), rest.end(), is_capital)) return refuse(true);
    Price price;
    for (auto const digits : {whole, part})
        for (char const c : digits)
            price.hundredths = 10 * price.hundredths + (c - '0');
    for (auto missing = part.size(); missing < 2; ++missing)
        price.hundredths *= 10;
    price.currency = std::string(rest);
    return {price, {}, false};
}

BANKWRIGHT_INLINE std::string print(Price const& price) {
    auto const whole = price.hundredths / 100;
    auto const part = price.hundredths % 100;
    return part == 0 ? fmt::format("{} {}", whole, price.currency)
                     : fmt::format("{}.{:02} {}", whole, part, price.currency);
}

} // namespace bankwright
