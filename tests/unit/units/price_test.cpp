#include "bankwright/units/price.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("units/price");

TEST_CASE("an amount and its currency") {
    for (auto const* text : {"189.50 USD", "0 EUR", "12 JPY", "0.05 GBP", "999999999.99 USD"}) {
        CAPTURE(text);
        auto const read = parse_price(text);
        REQUIRE(read.value);
        CHECK(print(*read.value) == text);
    }
    CHECK(parse_price("189.5USD").value == Price{18950, "USD"});
    CHECK(parse_price(" 189 USD ").value == Price{18900, "USD"});
}

TEST_CASE("what is no price is refused in words") {
    for (auto const* text : {"", "USD", "189", "189.505 USD", "189. USD", "-3 USD", "189 usd", "189 US", "1e3 USD",
                             "1,000 USD", "1234567890 USD", "189 USDX", "$ 189"}) {
        CAPTURE(text);
        auto const read = parse_price(text);
        CHECK_FALSE(read.value);
        CHECK(read.problem.find("189.50 USD") != std::string::npos);
    }
    CHECK(parse_price("189").unit_is_wrong);
}

TEST_SUITE_END();
