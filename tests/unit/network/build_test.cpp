#include "bankwright/network/build.hpp"
#include "support/jon_boat.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;
using support::jon_boat;
using support::named;
using support::plain_battery;
using support::plain_run;

namespace {

Element element(Network const& network, char const* id) { return part_of(network, id).elements.front(); }

// Terminals X+ X- of a load on a bank of one battery.
Bank one_battery() {
    Bank bank;
    bank.batteries = {plain_battery("A", 12.5, 0.1)};
    return bank;
}

} // namespace

TEST_CASE("every terminal is a node, in the author's order") {
    auto const network = build(jon_boat());
    CHECK(network.terminals.size() == 6 + 2 + 4 + 2);
    CHECK(network.circuit.nodes == 14);
    for (std::size_t i = 0; i < network.terminals.size(); ++i)
        CHECK(node_of(network, network.terminals[i]) == static_cast<int>(i));
    CHECK(network.terminals.front() == "A+");
    CHECK_THROWS_AS(node_of(network, "D+"), std::out_of_range);
    CHECK_THROWS_AS(part_of(network, "D"), std::out_of_range);
}

TEST_CASE("a battery is its open-circuit voltage behind its resistance, from its negative post to its positive") {
    auto const network = build(jon_boat());
    auto const b = element(network, "B");
    REQUIRE(b.is == Element::Is::branch);
    auto const& branch = network.circuit.branches[static_cast<std::size_t>(b.index)];
    CHECK(branch.from == node_of(network, "B-"));
    CHECK(branch.to == node_of(network, "B+"));
    CHECK(branch.emf == 12.6);
    CHECK(branch.resistance == 5e-3);
}

TEST_CASE("a conductor of no resistance is a join, and one with both ends on one terminal is nothing") {
    auto bank = jon_boat();
    bank.jumpers[0] = plain_run("J1", "A+", "B-", 0.0);
    bank.jumpers.push_back(plain_run("curl", "A+", "A+", 1e-3));
    auto const network = build(bank);
    CHECK(element(network, "J1").is == Element::Is::join);
    CHECK(element(network, "J2").is == Element::Is::branch);
    CHECK(element(network, "curl").is == Element::Is::gap);
    CHECK(network.circuit.joins.size() == 1);
}

TEST_CASE("breakers, fuses and switches are resistors, joins or gaps") {
    auto bank = one_battery();
    auto breaker = named<ProtectiveDevice>("CB");
    auto fuse = named<ProtectiveDevice>("F");
    fuse.resistance = 2e-3 * si::ohm;
    auto open = named<Switch>("S");
    open.resistance = 1e-3 * si::ohm;
    open.closed = false;
    bank.breakers = {breaker};
    bank.fuses = {fuse};
    bank.switches = {open};
    auto network = build(bank);
    CHECK(element(network, "CB").is == Element::Is::join);
    CHECK(element(network, "F").is == Element::Is::branch);
    CHECK(element(network, "S").is == Element::Is::gap);

    Moment moment;
    moment.everything_closed = true;
    network = build(bank, moment);
    CHECK(element(network, "S").is == Element::Is::branch);
    CHECK(element(network, "S").from == node_of(network, "S.1"));
    CHECK(element(network, "F").from == node_of(network, "F.line"));
}

TEST_CASE("a connector has its contact resistance in each pole, and apart it is two gaps") {
    auto bank = jon_boat();
    auto network = build(bank);
    auto const mated = part_of(network, "bow").elements;
    REQUIRE(mated.size() == 2);
    CHECK(mated[0].is == Element::Is::branch);
    CHECK(mated[0].from == node_of(network, "bow+"));
    CHECK(mated[0].to == node_of(network, "bow.plug+"));
    CHECK(mated[1].to == node_of(network, "bow.plug-"));
    CHECK(network.circuit.branches[static_cast<std::size_t>(mated[1].index)].resistance == 0.5e-3);

    bank.connectors[0].mated = false;
    network = build(bank);
    for (auto const& pole : part_of(network, "bow").elements)
        CHECK(pole.is == Element::Is::gap);
}

TEST_CASE("a motor's propeller coefficient is its current over its back-EMF squared") {
    auto bank = jon_boat();
    bank.motors[0].winding = 0.12 * si::ohm; // E = 36 - 50 x 0.12 = 30 V, c = 50 / 900
    bank.motors[0].throttle = Throttle::percent(60);
    auto const law = [](Network const& network) {
        return std::get<solver::SquareLaw>(network.circuit.loads.at(0).law);
    };
    auto square = law(build(bank));
    CHECK(square.coefficient == doctest::Approx(50.0 / 900.0).epsilon(1e-15));
    CHECK(square.resistance == 0.12);
    CHECK(square.duty == 0.6);

    Moment moment;
    moment.throttle = Throttle::percent(30);
    CHECK(law(build(bank, moment)).duty == 0.3);

    SUBCASE("without a speed control it is off or full") {
        bank.motors[0].control = SpeedControl::direct;
        CHECK(law(build(bank)).duty == 1.0);
        moment.throttle = Throttle::percent(0);
        CHECK(law(build(bank, moment)).duty == 0.0);
    }
    SUBCASE("a winding that takes all of the nameplate voltage is refused") {
        bank.motors[0].winding = 0.72 * si::ohm;
        CHECK_THROWS_AS(build(bank), std::invalid_argument);
    }
}

TEST_CASE("a load draws its current or its power, or is a resistor") {
    auto bank = one_battery();
    auto current = named<Load>("lamp");
    current.current = 2.0 * si::ampere;
    auto power = named<Load>("sonar");
    power.power = 30.0 * si::watt;
    auto ohmic = named<Load>("heater");
    ohmic.resistance = 1.5 * si::ohm;
    bank.loads = {current, power, ohmic};
    auto network = build(bank);
    CHECK(std::get<solver::ConstantCurrent>(network.circuit.loads[0].law).amperes == 2.0);
    CHECK(std::get<solver::ConstantPower>(network.circuit.loads[1].law).watts == 30.0);
    CHECK(network.circuit.loads[0].plus == node_of(network, "lamp+"));
    CHECK(element(network, "heater").is == Element::Is::branch);

    Moment moment;
    SUBCASE("at rest nothing is drawn, not even by an ohmic load") {
        moment.loads = LoadsAre::at_rest;
        network = build(bank, moment);
        CHECK(network.circuit.loads.empty());
        CHECK(network.circuit.branches.size() == 1);
    }
    SUBCASE("a given current is drawn by every load where there is no motor") {
        moment.loads = LoadsAre::constant_current;
        moment.current = 40.0 * si::ampere;
        network = build(bank, moment);
        CHECK(network.circuit.loads.size() == 3);
        for (auto const& load : network.circuit.loads)
            CHECK(std::get<solver::ConstantCurrent>(load.law).amperes == 40.0);
    }
    SUBCASE("and by the motor alone where there is one") {
        bank.motors = jon_boat().motors;
        moment.loads = LoadsAre::constant_current;
        moment.current = 40.0 * si::ampere;
        network = build(bank, moment);
        REQUIRE(network.circuit.loads.size() == 1);
        CHECK(network.circuit.loads[0].plus == node_of(network, "troll+"));
        CHECK(network.circuit.branches.size() == 1);
    }
    SUBCASE("a load that says nothing is refused") {
        bank.loads.push_back(named<Load>("mystery"));
        CHECK_THROWS_WITH_AS(build(bank), "`mystery` has no `resistance`", std::invalid_argument);
    }
}

TEST_CASE("a charger acts when connected, and shares its negatives when it is not isolated") {
    auto bank = one_battery();
    auto charger = named<Charger>("shore");
    charger.outputs = 3;
    charger.voltage = 14.4 * si::volt;
    charger.current = 10.0 * si::ampere;
    bank.chargers = {charger};
    auto network = build(bank);
    CHECK(network.circuit.loads.empty());
    CHECK(network.circuit.joins.empty());
    CHECK(part_of(network, "shore").elements.size() == 3);

    bank.chargers[0].connected = true;
    bank.chargers[0].isolated = false;
    network = build(bank);
    REQUIRE(network.circuit.loads.size() == 3);
    CHECK(network.circuit.loads[1].plus == node_of(network, "shore.2+"));
    CHECK(std::get<solver::LimitedSource>(network.circuit.loads[1].law).volts == 14.4);
    CHECK(network.circuit.joins.size() == 2);

    Moment moment;
    moment.chargers = false; // its metal still shares the negative
    network = build(bank, moment);
    CHECK(network.circuit.loads.empty());
    CHECK(network.circuit.joins.size() == 2);

    bank.chargers[0].current.reset(); // what it gives is not known: charging/rate says so
    CHECK(build(bank).circuit.loads.empty());
}

TEST_CASE("a caller's mistakes are named") {
    auto bank = jon_boat();
    SUBCASE("an unknown terminal") {
        bank.cables.push_back(plain_run("stray", "A-", "D+", 1e-3));
        CHECK_THROWS_WITH_AS(build(bank), "`stray`: `to` names `D+`, which the bank does not have",
                             std::invalid_argument);
    }
    SUBCASE("a name used twice") {
        bank.batteries.push_back(plain_battery("A", 12.5, 5e-3));
        CHECK_THROWS_AS(build(bank), std::invalid_argument);
    }
    SUBCASE("a name used twice where no terminal gives it away") {
        bank.jumpers.push_back(plain_run("main", "A+", "C+", 1e-3));
        CHECK_THROWS_WITH_AS(build(bank), "two parts are called `main`", std::invalid_argument);
    }
}

TEST_CASE("an empty bank is a circuit of one node") {
    auto const network = build(Bank{});
    CHECK(network.circuit.nodes == 1);
    CHECK(network.terminals.empty());
}
