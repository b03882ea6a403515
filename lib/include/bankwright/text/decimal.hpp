// What decimal number is written here, and which double is nearest to it? The same answer under every locale.
#pragma once

#include "bankwright/linkage.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bankwright {

// digits x 10^exponent, exactly as written; no leading or trailing zeros, digits empty for zero.
struct Decimal {
    bool negative = false;
    std::string digits;
    int exponent = 0;
};

// Reads [+-] digits [. digits] [e [+-] digits] and takes it off the front of `text`; leaves `text` alone if there is
// none.
std::optional<Decimal> read_decimal(std::string_view& text);

// The double nearest to number x factor x 10^power, ties to even, rounded once; none where that is too large for a
// double.
std::optional<double> nearest_double(Decimal const& number, std::uint64_t factor = 1, int power = 0);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/text/decimal_inl.hpp"
#endif
