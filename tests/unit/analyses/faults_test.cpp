#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/solve.hpp"
#include "support/jon_boat.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;
using support::jon_boat;

TEST_SUITE_BEGIN("analyses/faults");

namespace {

Moment with_current(double amperes) {
    Moment moment;
    moment.loads = LoadsAre::constant_current;
    moment.current = amperes * si::ampere;
    return moment;
}

struct FaultyBoat {
    Network network;
    std::vector<FaultChange> changes;

    explicit FaultyBoat(Bank const& bank, Moment const& moment)
        : network(build(bank, moment)), changes(single_faults(bank, network, places_of(bank))) {}

    // [V] between two terminals with the first fault that matches in place; 0 between islands.
    double volts(FaultKind kind, std::string const& part, std::string const& red, std::string const& black,
                 double value = 0.0, std::string const& on = {}) const {
        auto const it = std::find_if(changes.begin(), changes.end(), [&](FaultChange const& change) {
            auto const fault = describe(change, value, value, network);
            return fault.kind == kind && fault.part == part && fault.on == on;
        });
        REQUIRE(it != changes.end());
        auto wiring = wiring_of(network);
        apply(*it, value, wiring);
        auto const solution = solver::solve(wiring.circuit);
        REQUIRE(solution.status == solver::Status::solved);
        auto const a = static_cast<std::size_t>(node_of(network, red)),
                   b = static_cast<std::size_t>(node_of(network, black));
        return solution.island[a] == solution.island[b] ? solution.volts[a] - solution.volts[b] : 0.0;
    }
};

Moment at_rest() {
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    return moment;
}

} // namespace

// The jon boat is 12.8 V, 12.6 V and 12.7 V in series: 38.1 V. All by hand.
TEST_CASE("faults of batteries change what the meter reads at rest") {
    FaultyBoat const boat(jon_boat(), at_rest());
    CHECK(boat.volts(FaultKind::reversed, "B", "C+", "A-") == doctest::Approx(38.1 - 2 * 12.6));
    CHECK(boat.volts(FaultKind::reversed, "B", "B+", "B-") == doctest::Approx(12.6)); // the posts keep their names
    CHECK(boat.volts(FaultKind::reversed, "B", "A+", "B+") == doctest::Approx(0.0));  // J1 is on what is B+
    CHECK(boat.volts(FaultKind::dead, "C", "C+", "A-") == doctest::Approx(25.4));
    CHECK(boat.volts(FaultKind::low, "A", "C+", "A-", 0.10) == doctest::Approx(38.1 - 1.28));
}

TEST_CASE("a cell of six takes a sixth of the voltage") {
    auto bank = jon_boat();
    bank.batteries[1].chemistry = Chemistry::agm;
    FaultyBoat const boat(bank, at_rest());
    CHECK(boat.volts(FaultKind::shorted_cell, "B", "B+", "B-") == doctest::Approx(12.6 * 5 / 6));
    CHECK(boat.volts(FaultKind::dead_cell, "B", "B+", "B-", 10.0) == doctest::Approx(12.6 * 5 / 6));
    FaultyBoat const loaded(bank, with_current(10.0));
    CHECK(loaded.volts(FaultKind::shorted_cell, "B", "B+", "B-") == doctest::Approx((12.6 - 10 * 5e-3) * 5 / 6));
    CHECK(loaded.volts(FaultKind::dead_cell, "B", "B+", "B-", 10.0) == doctest::Approx(12.6 * 5 / 6 - 10 * 50e-3));
}

TEST_CASE("a battery whose cells nobody stated has none to suspect") {
    FaultyBoat const boat(jon_boat(), at_rest());
    CHECK(std::none_of(boat.changes.begin(), boat.changes.end(), [](auto const& change) {
        return change.kind == FaultKind::dead_cell || change.kind == FaultKind::shorted_cell;
    }));
}

TEST_CASE("faults of conductors and devices") {
    FaultyBoat const boat(jon_boat(), at_rest());
    CHECK(boat.volts(FaultKind::missing, "J1", "C+", "A-") == 0.0);
    CHECK(boat.volts(FaultKind::missing, "J1", "C+", "B-") == doctest::Approx(25.3));
    CHECK(boat.volts(FaultKind::open, "CB", "troll+", "troll-") == 0.0);
    CHECK(boat.volts(FaultKind::moved, "feed", "troll+", "troll-", 0.0, "B+") == doctest::Approx(25.4));
    FaultyBoat const loaded(jon_boat(), with_current(20.0)); // 50 milliohm as described
    CHECK(loaded.volts(FaultKind::resistive, "main", "troll+", "troll-", 0.1) == doctest::Approx(38.1 - 20 * 0.150));
    CHECK(loaded.volts(FaultKind::resistive, "CB", "CB.line", "CB.load", 0.1) == doctest::Approx(20 * 0.101));
    CHECK(loaded.volts(FaultKind::resistive, "bow", "bow+", "bow.plug+", 0.1) == doctest::Approx(20 * 0.1005));
}

// By hand: at 20 A the bank's 50 milliohm lose 1 V; the leads on the plug stand each where the other should.
TEST_CASE("exchanged leads turn what the motor sees, and nothing upstream of them") {
    FaultyBoat const boat(jon_boat(), at_rest());
    CHECK(boat.volts(FaultKind::exchanged, "troll", "troll+", "troll-") == doctest::Approx(-38.1));
    CHECK(boat.volts(FaultKind::exchanged, "troll", "bow.plug+", "bow.plug-") == doctest::Approx(38.1));
    CHECK(boat.volts(FaultKind::exchanged, "bow", "bow+", "bow-") == doctest::Approx(-38.1)); // the receptacle's
    CHECK(boat.volts(FaultKind::exchanged, "bow", "troll+", "troll-") == doctest::Approx(-38.1));
    CHECK(boat.volts(FaultKind::exchanged, "bow", "C+", "A-") == doctest::Approx(38.1));
}

TEST_CASE("a worn battery sags, a motor that takes nothing or too much is seen by what the leads lose") {
    FaultyBoat const loaded(jon_boat(), with_current(20.0));
    // B has 5 milliohm as described, ten times as much worn
    CHECK(loaded.volts(FaultKind::resistive, "B", "B+", "B-", 10.0) == doctest::Approx(12.6 - 20 * 50e-3));
    CHECK(loaded.volts(FaultKind::open, "troll", "troll+", "troll-") == doctest::Approx(38.1));
    CHECK(loaded.volts(FaultKind::stalled, "troll", "troll+", "troll-", 3.0) == doctest::Approx(38.1 - 3 * 20 * 50e-3));
    FaultyBoat const resting(jon_boat(), at_rest());
    CHECK(resting.volts(FaultKind::resistive, "B", "C+", "A-", 10.0) == doctest::Approx(38.1));
    CHECK(resting.volts(FaultKind::open, "troll", "troll+", "troll-") == doctest::Approx(38.1));
}

TEST_CASE("an ideal conductor can have a bad joint too") {
    auto bank = jon_boat();
    bank.cables[1].conductor.resistance = Resistance{}; // main
    FaultyBoat const boat(bank, with_current(20.0));
    CHECK(boat.volts(FaultKind::resistive, "main", "CB.load", "bow+", 0.1) == doctest::Approx(2.0));
    CHECK(boat.volts(FaultKind::missing, "main", "CB.load", "CB.line") == doctest::Approx(0.0));
}

TEST_CASE("every part has the faults that its kind can have, and a conductor one for each end and terminal in reach") {
    auto const bank = jon_boat();
    FaultyBoat const boat(bank, at_rest());
    std::map<FaultKind, int> counts;
    for (auto const& change : boat.changes)
        ++counts[change.kind];
    int const terminals = 6 + 2 + 4 + 2, conductors = 7;
    CHECK(counts[FaultKind::reversed] == 3);
    CHECK(counts[FaultKind::low] == 3);
    CHECK(counts[FaultKind::dead] == 3);
    CHECK(counts[FaultKind::missing] == conductors);
    // The two jumpers stay at the batteries' six posts; a cable of unknown length comes anywhere.
    CHECK(counts[FaultKind::moved] == 2 * 2 * (6 - 2) + 5 * 2 * (terminals - 2));
    CHECK(counts[FaultKind::open] == 5); // the breaker, each pole of the receptacle, the plug not home, the motor
    CHECK(counts[FaultKind::resistive] == conductors + 3 + 3); // joints, contacts and worn batteries
    CHECK(counts[FaultKind::exchanged] == 3);                  // receptacle, plug and motor
    CHECK(counts[FaultKind::stalled] == 1);
}

TEST_CASE("a fault is told in words, with the value that fits") {
    FaultyBoat const boat(jon_boat(), at_rest());
    auto const words = [&](FaultKind kind, std::string const& part, double value) {
        for (auto const& change : boat.changes) {
            auto const fault = describe(change, value, value, boat.network);
            if (fault.kind == kind && fault.part == part) return fault.detail;
        }
        return std::string("none");
    };
    CHECK(words(FaultKind::moved, "J1", 0.0) == "on A- instead of A+");
    CHECK(words(FaultKind::resistive, "main", 0.25) == "about 250 mohm more than it should");
    CHECK(words(FaultKind::resistive, "main", 0.1374) == "about 140 mohm more than it should");
    CHECK(words(FaultKind::open, "bow", 0.0) == "positive pole");
    CHECK(words(FaultKind::low, "A", 0.04) == "about 4 % below its voltage at rest");
    CHECK(words(FaultKind::reversed, "A", 0.0).empty());
    for (auto const& change : boat.changes)
        if (change.kind == FaultKind::resistive && !change.is_multiple) {
            CHECK(describe(change, 0.01, 2.0, boat.network).detail.find("10 mohm to 2 ohm more") == 0);
            CHECK(describe(change, change.ladder.front(), change.ladder.back(), boat.network).detail.empty());
            break;
        }
}
