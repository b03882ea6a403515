#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/sizing/strings.hpp"
#include "unit/sizing/random_boats.hpp"

#include <set>
#include <stdexcept>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("any number of strings makes a sound bank of that arrangement, with no name twice") {
    for (unsigned seed = 0; seed < 30; ++seed) {
        CAPTURE(seed);
        auto const boat = boats::RandomBoat(seed).make();
        auto const series = static_cast<int>(boat.system.voltage->value() / 12.0 + 0.5);
        REQUIRE(string_count(boat));
        CHECK(static_cast<std::size_t>(*string_count(boat) * series) == boat.batteries.size());
        for (int n = 1; n <= 5; ++n) {
            CAPTURE(n);
            auto const bank = with_strings(boat, n);
            CHECK(check(bank).arrangement == std::to_string(series) + "S" + std::to_string(n) + "P");
            CHECK(check(bank, {{"wiring"}, {}}).findings.empty());
            std::set<std::string> names;
            std::size_t parts = 0;
            for_each_part(bank, [&](PartKind, auto const& part) {
                names.insert(id_of(part));
                ++parts;
            });
            CHECK(names.size() == parts);
            // Diagonal: the two batteries at the leads work alike.
            auto const point = operating_point(bank);
            auto const first = reading_of(point, bank.batteries.front().id).current.value();
            auto const last = reading_of(point, bank.batteries.back().id).current.value();
            CHECK(first == doctest::Approx(last).epsilon(1e-6));
        }
    }
}

TEST_CASE("strings behind fuses of their own are left as they are built") {
    using namespace literals;
    auto boat = boats::RandomBoat(1).make();
    ProtectiveDevice fuse;
    fuse.id = "F";
    fuse.rating = 100_A;
    boat.fuses = {fuse};
    boat.batteries.resize(1);
    boat.batteries.push_back(boat.batteries[0]);
    boat.batteries[0].id = "A";
    boat.batteries[1].id = "B";
    boat.system.voltage = 12_V;
    boat.motors[0].voltage = 12_V;
    auto const run = [&](char const* id, char const* from, char const* to) {
        auto r = boat.cables.front();
        r.conductor.id = id;
        r.from = from;
        r.to = to;
        return r;
    };
    boat.jumpers.clear();
    boat.cables = {run("1", "A+", "F.line"),  run("2", "F.load", "B+"),  run("3", "A-", "B-"),
                   run("4", "B+", "CB.line"), run("5", "CB.load", "M+"), run("6", "M-", "A-")};
    CHECK_FALSE(string_count(boat));
    CHECK_THROWS_AS(with_strings(boat, 2), std::invalid_argument);
}

TEST_CASE("a name that is taken is not given again, and a string with a second way through is none") {
    auto boat = boats::RandomBoat(3).make();
    auto const strings = string_count(boat);
    REQUIRE(strings);
    auto one = with_strings(boat, 1);
    auto const first = one.batteries.front().id;
    Load lamp;
    lamp.id = first + "-2";
    lamp.current = 1.0 * si::ampere;
    one.loads.push_back(lamp);
    auto run = one.cables.front();
    run.conductor.id = "lamp-plus";
    run.from = one.motors.front().id + "+";
    run.to = lamp.id + "+";
    one.cables.push_back(run);
    run.conductor.id = "lamp-minus";
    run.from = one.motors.front().id + "-";
    run.to = lamp.id + "-";
    one.cables.push_back(run);
    REQUIRE(string_count(one) == 1);
    auto const two = with_strings(one, 2);
    std::set<std::string> names;
    for_each_part(two, [&](PartKind, auto const& part) { CHECK(names.insert(id_of(part)).second); });
    CHECK(names.count(first + "-2-2") == 1);

    if (!one.jumpers.empty()) {
        auto twice = one;
        twice.jumpers.push_back(twice.jumpers.front());
        twice.jumpers.back().conductor.id = "beside";
        CHECK_THROWS_AS(with_strings(twice, 2), std::invalid_argument);
    }
}
