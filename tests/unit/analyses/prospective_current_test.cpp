#include "bankwright/analyses/prospective_current.hpp"
#include "bankwright/analyses/short_circuit/shorted_network.hpp"
#include "support/jon_boat.hpp"

#include <cmath>
#include <stdexcept>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::support;
using doctest::Approx;

namespace {

// Two 12 V batteries side by side, the second over jumpers of 1 milliohm, and a breaker of no resistance on the first.
Bank pair() {
    Bank bank;
    bank.batteries = {plain_battery("A", 12.9, 4e-3), plain_battery("B", 12.6, 4e-3)};
    bank.jumpers = {plain_run("P", "A+", "B+", 1e-3), plain_run("N", "A-", "B-", 1e-3)};
    auto breaker = named<ProtectiveDevice>("CB");
    breaker.rating = 60.0 * si::ampere;
    bank.breakers = {breaker};
    bank.cables = {plain_run("feed", "A+", "CB.line", 2e-3), plain_run("main", "CB.load", "L+", 8e-3),
                   plain_run("return", "L-", "A-", 8e-3)};
    auto load = named<Load>("L");
    load.current = 20.0 * si::ampere;
    bank.loads = {load};
    return bank;
}

} // namespace

TEST_CASE("a short behind the jon boat's breaker draws what Ohm's law says of the wires up to it") {
    BoltedShorts shorts(jon_boat());
    // 38.1 V behind 15 milliohm of batteries, 2 of jumpers, 1 of feed, and 1 of the breaker itself behind it.
    CHECK(shorts.at("CB.line", "CB")->total.value() == Approx(38.1 / 18e-3).epsilon(1e-12));
    CHECK(shorts.at("CB.line", "CB")->through_part.value() == Approx(0.0).epsilon(1e-9)); // nothing feeds it from there
    CHECK(shorts.at("CB.load", "CB")->total.value() == Approx(38.1 / 19e-3).epsilon(1e-12));
    CHECK(shorts.at("CB.load", "CB")->through_part.value() == Approx(38.1 / 19e-3).epsilon(1e-12));
}

TEST_CASE("what circulates between two batteries is added to what a short draws from each") {
    // A holds A+ at 0.3 V / 10 milliohm x 4 milliohm below its 12.9 V; against A+, B and its jumpers are 6 milliohm.
    auto const open = 12.9 - 4e-3 * 0.3 / 10e-3;
    auto const inner = 1.0 / (1.0 / 4e-3 + 1.0 / 6e-3);
    auto const total = open / (inner + 2e-3);
    BoltedShorts shorts(pair());
    for (auto const* side : {"CB.line", "CB.load"})
        CHECK(shorts.at(side, "CB")->total.value() == Approx(total).epsilon(1e-12));
    CHECK(shorts.at("CB.load", "CB")->through_part.value() == Approx(total).epsilon(1e-12));
    CHECK(shorts.at("CB.load", "A")->through_part.value() == Approx((12.9 - total * 2e-3) / 4e-3).epsilon(1e-12));
    CHECK(shorts.at("CB.load", "P")->through_part.value() == Approx((12.6 - total * 2e-3) / 6e-3).epsilon(1e-12));
}

TEST_CASE("a short by Thevenin's theorem is the short of the circuit with the two points joined") {
    for (auto const& bank : {jon_boat(), pair()}) {
        BoltedShorts shorts(bank);
        ShortedNetwork const network(bank);
        for (auto const* terminal : {"A+", "B+", "CB.line", "CB.load"}) {
            auto const joined = network.between(terminal, "A-");
            REQUIRE(joined);
            for (auto const& [part, current] : joined->parts) {
                auto const carried = shorts.at(terminal, part);
                REQUIRE(carried);
                CHECK(carried->total.value() == Approx(joined->total.value()).epsilon(1e-12));
                CHECK(carried->through_part.value() == Approx(std::abs(current.value())).epsilon(1e-10));
            }
        }
    }
}

TEST_CASE("there is no short between a point and itself, and none of a part that is not there") {
    BoltedShorts shorts(jon_boat());
    CHECK_FALSE(shorts.at("A-", "CB"));
    CHECK_THROWS_AS(shorts.at("CB.load", "none"), std::out_of_range);
    CHECK_THROWS_AS(shorts.at("none", "CB"), std::out_of_range);
}
