#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/prospective_current.hpp"
#include "bankwright/analyses/seen_from.hpp"
#include "bankwright/analyses/short_circuit/shorted_network.hpp"
#include "support/jon_boat.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::support;
using doctest::Approx;

namespace {

double volts_at_motor(Bank const& bank) { return reading_of(operating_point(bank), "troll").voltage.value(); }

} // namespace

TEST_CASE("from the motor's posts the jon boat is 38.1 V behind 50 milliohm") {
    auto const seen = seen_from(jon_boat(), "troll+", "troll-").source;
    REQUIRE(seen);
    CHECK(seen->open.value() == Approx(38.1));
    CHECK(seen->resistance.value() == Approx(0.050));
    CHECK(seen->short_current->value() == Approx(762.0));
}

TEST_CASE("what flows into a bolted short is the open voltage over the resistance, seen from any two terminals") {
    auto const bank = jon_boat();
    ShortedNetwork const network(bank);
    for (auto const* terminal : {"B-", "B+", "C+", "CB.load", "bow+", "troll+"}) {
        auto const seen = seen_from(bank, terminal, "A-").source;
        auto const carried = network.between(terminal, "A-");
        REQUIRE(seen);
        REQUIRE(carried);
        CHECK(seen->short_current->value() == Approx(carried->total.value()).epsilon(1e-12));
        CHECK(seen->open.value() / seen->short_current->value() == Approx(seen->resistance.value()).epsilon(1e-12));
    }
}

TEST_CASE("turned around, the voltage changes its sign and the resistance stays") {
    auto const there = seen_from(jon_boat(), "C+", "A-").source, back = seen_from(jon_boat(), "A-", "C+").source;
    CHECK(back->open.value() == Approx(-there->open.value()));
    CHECK(back->resistance.value() == Approx(there->resistance.value()));
    CHECK(back->short_current->value() == Approx(-there->short_current->value()));
}

TEST_CASE("with the motor running a little more current lowers its voltage as the tangent says") {
    SeenFromOptions options;
    options.moment = {};
    auto const bank = jon_boat();
    auto const seen = seen_from(bank, "troll+", "troll-", options).source;
    REQUIRE(seen);
    CHECK(seen->open.value() == Approx(volts_at_motor(bank)));
    CHECK(seen->resistance < 0.050 * si::ohm); // the motor draws less at a lower voltage
    auto with_lamp = bank;
    auto lamp = named<Load>("lamp");
    lamp.current = 1e-3 * si::ampere;
    with_lamp.loads = {lamp};
    with_lamp.cables.push_back(plain_run("lamp-p", "troll+", "lamp+", 1e-3));
    with_lamp.cables.push_back(plain_run("lamp-n", "lamp-", "troll-", 1e-3));
    auto const fall = volts_at_motor(bank) - volts_at_motor(with_lamp);
    CHECK(fall / 1e-3 == Approx(seen->resistance.value()).epsilon(1e-6));
    options.loads = solver::LoadsDo::hold;
    CHECK(seen_from(bank, "troll+", "troll-", options).source->resistance.value() == Approx(0.050));
}

TEST_CASE("behind an open breaker there is no source, and one point is no short") {
    auto bank = jon_boat();
    bank.breakers[0].closed = false;
    CHECK(seen_from(bank, "troll+", "troll-").status == solver::Status::solved);
    CHECK_FALSE(seen_from(bank, "bow+", "A-").source);
    auto const same = seen_from(bank, "A+", "A+").source;
    REQUIRE(same);
    CHECK(same->resistance.value() == 0.0);
    CHECK_FALSE(same->short_current);
    CHECK_THROWS_AS(seen_from(bank, "A+", "Z-"), std::out_of_range);
}
