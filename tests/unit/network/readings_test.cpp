// Signs are those of the contract; the solution here is made up, number by number.
#include "bankwright/network/build.hpp"
#include "bankwright/network/readings.hpp"
#include "support/jon_boat.hpp"

#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright;
using support::named;
using support::plain_battery;
using support::plain_run;

namespace {

solver::Solution solved(Network const& network) {
    solver::Solution solution;
    solution.status = solver::Status::solved;
    solution.volts.assign(static_cast<std::size_t>(network.circuit.nodes), 0.0);
    solution.island.assign(solution.volts.size(), 0);
    solution.branch_amps.assign(network.circuit.branches.size(), 0.0);
    solution.join_amps.assign(network.circuit.joins.size(), 0.0);
    solution.load_amps.assign(network.circuit.loads.size(), 0.0);
    return solution;
}

} // namespace

TEST_CASE("a battery reads its terminal voltage and what it delivers") {
    Bank bank;
    bank.batteries = {plain_battery("A", 12.5, 0.1)};
    auto const network = build(bank);
    auto solution = solved(network);
    solution.volts = {11.5, 0.0}; // A+ A-
    solution.branch_amps = {10.0};
    auto const reading = read_parts(network, solution).at(0);
    CHECK(reading.kind == PartKind::battery);
    CHECK(reading.current.value() == 10.0);
    CHECK(reading.voltage.value() == 11.5);
    CHECK(reading.power.value() == 115.0);
}

TEST_CASE("a conductor reads the drop from `from` to `to`, and a join a current without a drop") {
    Bank bank;
    bank.busbars = {{"P", {}, {}}, {"Q", {}, {}}, {"R", {}, {}}};
    bank.jumpers = {plain_run("wire", "P", "Q", 0.1), plain_run("strap", "Q", "R", 0.0)};
    auto const network = build(bank);
    auto solution = solved(network);
    solution.volts = {2.0, 1.0, 1.0};
    solution.branch_amps = {10.0};
    solution.join_amps = {-4.0};
    auto const readings = read_parts(network, solution);
    CHECK(readings[0].voltage.value() == 1.0);
    CHECK(readings[0].power.value() == 10.0);
    CHECK(readings[1].current.value() == -4.0);
    CHECK(readings[1].power.value() == 0.0);
    SUBCASE("a busbar reads half of what its conductors carry") {
        CHECK(readings[2].id == "P");
        CHECK(readings[2].current.value() == 5.0);
        CHECK(readings[3].current.value() == 7.0);
        CHECK(readings[3].voltage.value() == 0.0);
        CHECK(readings[3].power.value() == 0.0);
    }
}

TEST_CASE("a connector reads its positive pole, and the power of both") {
    Bank bank;
    auto bow = named<Connector>("bow");
    bow.contact = 0.01 * si::ohm;
    bank.connectors = {bow};
    auto const network = build(bank);
    auto solution = solved(network);
    solution.volts = {12.0, 0.0, 11.5, 0.5}; // bow+ bow- bow.plug+ bow.plug-
    solution.branch_amps = {50.0, -50.0};
    auto const reading = read_parts(network, solution).at(0);
    CHECK(reading.current.value() == 50.0);
    CHECK(reading.voltage.value() == 0.5);
    CHECK(reading.power.value() == 50.0);
}

TEST_CASE("a charger that charges reads negative, summed over its outputs") {
    Bank bank;
    auto shore = named<Charger>("shore");
    shore.outputs = 2;
    shore.isolated = false;
    shore.voltage = 14.4 * si::volt;
    shore.current = 10.0 * si::ampere;
    shore.connected = true;
    bank.chargers = {shore};
    auto const network = build(bank);
    auto solution = solved(network);
    solution.volts = {14.0, 0.0, 13.0, 0.0};
    solution.load_amps = {-10.0, -5.0};
    solution.join_amps = {99.0}; // between its negatives: none of the outputs' current
    auto const reading = read_parts(network, solution).at(0);
    CHECK(reading.current.value() == -15.0);
    CHECK(reading.voltage.value() == 13.5);
    CHECK(reading.power.value() == -205.0);
}

TEST_CASE("between islands there is no voltage, and with no current no power") {
    Bank bank;
    auto open = named<ProtectiveDevice>("CB");
    open.closed = false;
    bank.breakers = {open};
    auto const network = build(bank);
    auto solution = solved(network);
    solution.island = {0, 1};
    auto const reading = read_parts(network, solution).at(0);
    CHECK(std::isnan(reading.voltage.value()));
    CHECK(reading.current.value() == 0.0);
    CHECK(reading.power.value() == 0.0);
    auto const terminals = read_terminals(network, solution);
    CHECK(terminals[0].voltage.has_value());
    CHECK(!terminals[1].voltage.has_value());
}

TEST_CASE("a reading of nothing has no sign") {
    Bank bank;
    bank.batteries = {plain_battery("A", 12.5, 0.1)};
    auto const network = build(bank);
    auto solution = solved(network);
    solution.volts = {12.5, -0.0};
    solution.branch_amps = {-0.0};
    auto const reading = read_parts(network, solution).at(0);
    CHECK(!std::signbit(reading.current.value()));
    CHECK(!std::signbit(reading.power.value()));
    CHECK(!std::signbit(read_terminals(network, solution).at(1).voltage->value()));
}

TEST_CASE("where nothing was solved nothing is read") {
    auto const network = build(support::jon_boat());
    solver::Solution const failed; // bad_circuit, no numbers
    CHECK(read_parts(network, failed).empty());
    auto const terminals = read_terminals(network, failed);
    CHECK(terminals.size() == network.terminals.size());
    for (auto const& terminal : terminals)
        CHECK(!terminal.voltage.has_value());
}
