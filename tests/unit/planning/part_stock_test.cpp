#include "bankwright/planning/part_stock.hpp"
#include "bankwright/planning/usual_parts.hpp"

#include <algorithm>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("planning/part_stock");

TEST_CASE("the usual parts read clean, and there is every kind of them") {
    auto const stock = usual_parts();
    for (auto const& finding : stock.findings)
        FAIL_CHECK(finding.message);
    for (auto const chemistry : {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4})
        CHECK(std::any_of(stock.batteries.begin(), stock.batteries.end(),
                          [&](Battery const& battery) { return battery.chemistry == chemistry; }));
    for (auto const& battery : stock.batteries) {
        CAPTURE(battery.id);
        CHECK(battery.mass);
        CHECK(battery.size);
        CHECK(battery.resistance);
        CHECK_FALSE(battery.price); // nobody asks it
    }
    CHECK(stock.breakers.size() > 10);
    CHECK(stock.fuses.size() > 10);
    CHECK(stock.connectors.size() >= 3);
    CHECK(stock.switches.size() >= 2);
    CHECK(stock.busbars.size() >= 2);
    CHECK(stock.wire.insulation);
}

TEST_CASE("models are sorted by what their keys say") {
    auto const stock =
        part_stock({{"yard.toml",
                     "bankwright-parts = 1\n[models]\n"
                     "deep = { chemistry = \"agm\", voltage = \"12 V\", capacity = \"90 Ah\", price = \"210 USD\" }\n"
                     "cb60 = { rating = \"60 A\", interrupts = \"5000 A\", class = \"ul-489\" }\n"
                     "t100 = { rating = \"100 A\", class = \"ul-248-15\" }\n"
                     "fuse-40 = { rating = \"40 A\", interrupts = \"2000 A\" }\n"
                     "bow = { rating = \"60 A\", contact = \"0.3 mohm\" }\n"
                     "bar = { rating = \"150 A\", studs = 4 }\n"
                     "off = { rating = \"100 A\" }\n"
                     "tinned = { insulation = \"90 degC\", tinned = true }\n"
                     "no6 = { size = \"6 AWG\" }\n",
                     {}}});
    CHECK(stock.findings.empty());
    REQUIRE(stock.batteries.size() == 1);
    CHECK(stock.batteries[0].price == Price{21000, "USD"});
    REQUIRE(stock.breakers.size() == 1);
    CHECK(stock.breakers[0].id == "cb60");
    REQUIRE(stock.fuses.size() == 2);
    CHECK(stock.fuses[0].id == "fuse-40"); // from the smallest
    CHECK(stock.fuses[1].id == "t100");
    REQUIRE(stock.connectors.size() == 1);
    REQUIRE(stock.busbars.size() == 1);
    REQUIRE(stock.switches.size() == 1);
    CHECK(stock.wire.insulation == celsius(90.0));
}

TEST_CASE("of a kind that a list has none of the usual ones are taken") {
    auto const stock = part_stock({{"yard.toml", "bankwright-parts = 1\n", {}}});
    CHECK(stock.findings.empty());
    CHECK(stock.batteries == usual_parts().batteries);
    CHECK(stock.breakers == usual_parts().breakers);
}

TEST_CASE("what is wrong with a list is found in it") {
    auto const stock = part_stock({{"some/yard.toml",
                                    "bankwright-parts = 1\n[models]\n"
                                    "deep = { chemistry = \"agm\", voltage = \"12 V\", capacity = \"90 furlongs\" }\n",
                                    {}}});
    REQUIRE_FALSE(stock.findings.empty());
    CHECK(stock.findings[0].file == "some/yard.toml");
    REQUIRE(stock.findings[0].region);
    CHECK(stock.findings[0].region->begin.line == 3);
    for (auto const* text : {"", "[models", "bankwright = 1\n[batteries]\n", "\xff", "bankwright-parts = 2\n"}) {
        CAPTURE(text);
        CHECK_FALSE(part_stock({{"yard.toml", text, {}}}).findings.empty());
    }
}

TEST_SUITE_END();
