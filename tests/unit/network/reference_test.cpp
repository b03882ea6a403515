#include "bankwright/network/build.hpp"
#include "bankwright/network/reference.hpp"
#include "support/jon_boat.hpp"

#include <algorithm>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;
using support::jon_boat;
using support::named;
using support::plain_battery;
using support::plain_run;

namespace {

std::string reference_of(Bank const& bank, Moment const& moment = {}) {
    auto const network = build(bank, moment);
    return network.terminals[static_cast<std::size_t>(network.circuit.reference)];
}

} // namespace

TEST_CASE("the reference is the negative end of the series string, wherever its battery is listed") {
    auto bank = jon_boat();
    CHECK(reference_of(bank) == "A-");
    std::reverse(bank.batteries.begin(), bank.batteries.end());
    CHECK(reference_of(bank) == "A-");
}

TEST_CASE("of parallel strings the first in the author's order gives the reference") {
    Bank bank;
    for (auto const* id : {"B1", "A1", "B2", "A2"})
        bank.batteries.push_back(plain_battery(id, 12.7, 5e-3));
    bank.jumpers = {plain_run("a", "A1+", "A2-", 1e-3), plain_run("b", "B1+", "B2-", 1e-3),
                    plain_run("p", "A2+", "B2+", 1e-3), plain_run("n", "A1-", "B1-", 1e-3)};
    CHECK(reference_of(bank) == "B1-");
    std::swap(bank.batteries[0], bank.batteries[1]);
    CHECK(reference_of(bank) == "A1-");
}

TEST_CASE("the island with most batteries is the bank, the first of equals") {
    Bank bank;
    for (auto const* id : {"lone", "A", "B"})
        bank.batteries.push_back(plain_battery(id, 12.7, 5e-3));
    CHECK(reference_of(bank) == "lone-");
    bank.jumpers = {plain_run("J", "A+", "B-", 1e-3)};
    CHECK(reference_of(bank) == "A-");
}

TEST_CASE("an open switch parts the bank and everything closed joins it") {
    auto bank = jon_boat();
    bank.jumpers[0] = plain_run("J1", "A+", "S.1", 1e-3);
    bank.jumpers.push_back(plain_run("J3", "S.2", "B-", 1e-3));
    bank.switches = {named<Switch>("S")};
    bank.switches[0].closed = false;
    bank.cables.erase(bank.cables.begin() + 2); // return: the motor no longer joins the two halves through a load
    CHECK(reference_of(bank) == "B-");
    Moment moment;
    moment.everything_closed = true;
    CHECK(reference_of(bank, moment) == "A-");
}

TEST_CASE("a load carries no nominal potential") {
    Bank bank;
    bank.batteries = {plain_battery("A", 12.7, 5e-3), plain_battery("B", 12.7, 5e-3)};
    auto heater = named<Load>("heater");
    heater.resistance = 1.0 * si::ohm;
    bank.loads = {heater};
    // B's positive post reaches A's negative only through the heater: two islands of one battery each.
    bank.cables = {plain_run("1", "B+", "heater+", 1e-3), plain_run("2", "heater-", "A-", 1e-3)};
    CHECK(reference_of(bank) == "A-");
}

TEST_CASE("a shorted battery does not move the reference") {
    auto bank = jon_boat();
    bank.jumpers.push_back(plain_run("oops", "A+", "A-", 1e-3)); // A+ is at 0 V and at 12 V: the first visited counts
    CHECK(reference_of(bank) == "A-");
}

TEST_CASE("a reversed battery's negative post is still a negative post") {
    // A+ at the bottom, then B and C: A- is 12 V above A+, where B- is too. Nothing is lower, A comes first.
    Bank bank;
    bank.batteries = {plain_battery("A", 12.8, 4e-3), plain_battery("B", 12.6, 5e-3), plain_battery("C", 12.7, 6e-3)};
    bank.jumpers = {plain_run("J1", "A-", "B-", 1e-3), plain_run("J2", "B+", "C-", 1e-3)};
    CHECK(reference_of(bank) == "A-");
}

TEST_CASE("a bank without batteries counts from its first terminal") {
    Bank bank;
    bank.busbars = {{"NEG", {}, {}}};
    CHECK(reference_of(bank) == "NEG");
}
