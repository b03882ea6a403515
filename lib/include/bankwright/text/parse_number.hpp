// What number does this text begin with? Always a point, never a comma, whatever the locale.
#pragma once

#include "bankwright/text/decimal.hpp"

#include <optional>
#include <string_view>

namespace bankwright {

// The nearest double to the decimal number at the front of `text`, which is consumed. None, and `text` as it was,
// where there is no number or one too large for a double. No blanks, no hexadecimal, no infinities.
inline std::optional<double> parse_number(std::string_view& text) {
    auto rest = text;
    auto const number = read_decimal(rest);
    if (!number) return std::nullopt;
    auto const value = nearest_double(*number);
    if (value) text = rest;
    return value;
}

} // namespace bankwright
