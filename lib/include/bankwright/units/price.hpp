// What does it cost? An amount of one currency, kept in hundredths so that sums are exact.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/units/parsed.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace bankwright {

struct Price {
    std::int64_t hundredths = 0;
    std::string currency; // three capital letters, as ISO 4217 has them

    friend bool operator==(Price const&, Price const&) = default;
};

// "189.50 USD": at most two decimals and a thousand million of anything.
Parsed<Price> parse_price(std::string_view text);

// "189.50 USD", "189 USD"; parse_price() reads it back.
std::string print(Price const& price);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/units/price_inl.hpp"
#endif
