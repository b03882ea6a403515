#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/units/literals.hpp"
#include "support/jon_boat.hpp"

#include <optional>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;
using namespace bankwright::support;

namespace {

// 12.8 V behind 10 milliohm beside 12.4 V behind 10, their negatives joined; a load of 2 ohm from what joins them.
Bank house_and_start() {
    Bank bank;
    bank.batteries = {plain_battery("A", 12.8, 10e-3), plain_battery("B", 12.4, 10e-3)};
    bank.cables = {plain_run("neg", "A-", "B-", 0.0), plain_run("back", "lamp-", "A-", 0.0)};
    auto lamp = named<Load>("lamp");
    lamp.resistance = 2.0 * si::ohm;
    bank.loads = {lamp};
    return bank;
}

double amperes(OperatingPoint const& point, std::string const& id) {
    for (auto const& part : point.parts)
        if (part.id == id) return part.current.value();
    FAIL("no part " << id);
    return 0.0;
}

double volts(OperatingPoint const& point, std::string const& terminal) {
    for (auto const& reading : point.terminals)
        if (reading.name == terminal) return reading.voltage.value_or(Voltage{}).value();
    FAIL("no terminal " << terminal);
    return 0.0;
}

Bank with_selector(std::optional<SelectorPosition> position) {
    auto bank = house_and_start();
    auto selector = named<Selector>("SEL");
    selector.position = position;
    bank.selectors = {selector};
    bank.cables.push_back(plain_run("a", "A+", "SEL.1", 0.0));
    bank.cables.push_back(plain_run("b", "B+", "SEL.2", 0.0));
    bank.cables.push_back(plain_run("c", "SEL.common", "lamp+", 0.0));
    return bank;
}

Bank with_relay(Relay relay) {
    auto bank = house_and_start();
    bank.relays = {std::move(relay)};
    bank.cables.push_back(plain_run("a", "A+", "R.1", 0.0));
    bank.cables.push_back(plain_run("b", "R.2", "B+", 0.0));
    bank.cables.push_back(plain_run("c", "A+", "lamp+", 0.0));
    auto charger = named<Charger>("ch");
    charger.voltage = 14.4_V;
    charger.current = 20_A;
    charger.connected = true;
    bank.chargers = {charger};
    bank.cables.push_back(plain_run("cp", "ch.1+", "A+", 0.0));
    bank.cables.push_back(plain_run("cn", "ch.1-", "A-", 0.0));
    return bank;
}

} // namespace

TEST_CASE("a selector joins its common to one of two banks, to both or to none, and stands on 1 unless said") {
    auto const at = [](std::optional<SelectorPosition> position) { return operating_point(with_selector(position)); };
    CHECK(amperes(at(SelectorPosition::first), "A") == doctest::Approx(12.8 / 2.010));
    CHECK(amperes(at(SelectorPosition::first), "B") == doctest::Approx(0.0));
    CHECK(amperes(at(SelectorPosition::second), "B") == doctest::Approx(12.4 / 2.010));
    CHECK(amperes(at(std::nullopt), "A") == doctest::Approx(12.8 / 2.010));
    CHECK(amperes(at(SelectorPosition::off), "lamp") == doctest::Approx(0.0));
    auto const both = at(SelectorPosition::both); // 12.6 V behind 5 milliohm
    CHECK(amperes(both, "lamp") == doctest::Approx(12.6 / 2.005));
    CHECK(amperes(both, "A") - amperes(both, "B") == doctest::Approx(0.4 / 10e-3));
}

TEST_CASE("a relay joins two banks while a charger holds the voltage at which it closes, or as it is set by hand") {
    auto relay = named<Relay>("R");
    auto const joined = [](Relay const& one) {
        auto const point = operating_point(with_relay(one));
        return volts(point, "A+") == doctest::Approx(volts(point, "B+"));
    };
    CHECK(joined(relay)); // any charger at work
    relay.closes_above = 14.5_V;
    CHECK_FALSE(joined(relay));
    relay.closes_above = 13.3_V;
    CHECK(joined(relay));
    relay.closed = false;
    CHECK_FALSE(joined(relay));
    auto off = with_relay(named<Relay>("R"));
    off.chargers[0].connected = false;
    auto const point = operating_point(off);
    CHECK(volts(point, "B+") == doctest::Approx(12.4));
}

TEST_CASE("a shunt is as many ohms as its drop over its rating, and says the current by its voltage") {
    auto bank = house_and_start();
    auto shunt = named<Shunt>("SH");
    shunt.rating = 500_A;
    shunt.drop = 50_mV; // 0.1 milliohm
    bank.shunts = {shunt};
    bank.cables[1] = plain_run("back", "lamp-", "SH.1", 0.0);
    bank.cables.push_back(plain_run("home", "SH.2", "A-", 0.0));
    bank.cables.push_back(plain_run("p", "A+", "lamp+", 0.0));
    auto const point = operating_point(bank);
    auto const current = 12.8 / (2.0 + 10e-3 + 0.1e-3);
    CHECK(amperes(point, "SH") == doctest::Approx(current));
    CHECK(volts(point, "SH.1") - volts(point, "SH.2") == doctest::Approx(0.1e-3 * current));
    bank.shunts[0].resistance = 1e-3 * si::ohm; // stated as it is, that counts
    CHECK(amperes(operating_point(bank), "SH") == doctest::Approx(12.8 / (2.0 + 10e-3 + 1e-3)));
}

TEST_CASE("a device on a post has that post for its line terminal") {
    auto bank = house_and_start();
    auto fuse = named<ProtectiveDevice>("F");
    fuse.resistance = 5e-3 * si::ohm;
    fuse.on = "A+";
    bank.fuses = {fuse};
    bank.cables.push_back(plain_run("p", "F.load", "lamp+", 0.0));
    auto const point = operating_point(bank);
    CHECK(amperes(point, "F") == doctest::Approx(12.8 / (2.0 + 10e-3 + 5e-3)));
    CHECK(volts(point, "F.line") == doctest::Approx(volts(point, "A+")));
}
