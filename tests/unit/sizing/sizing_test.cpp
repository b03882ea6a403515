#include "bankwright/analyses/discharge.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/sizing/sizing.hpp"
#include "bankwright/sizing/strings.hpp"
#include "unit/sizing/random_boats.hpp"

#include <algorithm>
#include <set>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;
using boats::RandomBoat;
using namespace bankwright::literals;

namespace {

// Errors and warnings of every rule there is, asked of check() alone.
std::multiset<std::string> complaints(Bank const& bank) {
    std::multiset<std::string> all;
    for (auto const& finding : check(bank).findings)
        if (finding.level != Level::note && !finding.accepted) all.insert(finding.rule);
    return all;
}

Bank with_size(Bank bank, std::vector<std::string> const& parts, WireSize size) {
    for (auto* runs : {&bank.jumpers, &bank.cables})
        for (auto& run : *runs)
            if (std::count(parts.begin(), parts.end(), run.conductor.id) > 0) run.conductor.size = size;
    return bank;
}

Bank with_rating(Bank bank, std::vector<std::string> const& parts, Current rating) {
    for (auto* devices : {&bank.breakers, &bank.fuses})
        for (auto& device : *devices)
            if (std::count(parts.begin(), parts.end(), device.id) > 0) device.rating = rating;
    return bank;
}

template <class T, class Less>
T before(std::vector<T> const& all, T const& one, Less const& less) {
    auto const at = std::lower_bound(all.begin(), all.end(), one, less);
    REQUIRE(at != all.begin());
    return *(at - 1);
}

void check_no_less(SizingResult const& result, SizeSystem system) {
    auto const now = complaints(result.bank).size();
    for (auto const& group : result.groups) {
        CAPTURE(group.parts.front());
        if (group.smaller.empty()) continue;
        auto const smaller =
            group.size
                ? with_size(result.bank, group.parts,
                            before(standard_wire_sizes(system), *group.size,
                                   [](WireSize a, WireSize b) { return a.area() < b.area() * (1.0 - 1e-9); }))
                : with_rating(result.bank, group.parts,
                              before(standard_ratings(), *group.rating, [](Current a, Current b) { return a < b; }));
        CHECK(complaints(smaller).size() > now);
        CHECK_FALSE(group.refused.empty());
    }
}

} // namespace

TEST_CASE("what is chosen for any boat pleases every rule, and no step smaller does") {
    int sized = 0;
    for (unsigned seed = 0; seed < 12; ++seed) {
        CAPTURE(seed);
        auto const boat = RandomBoat(seed).make();
        for (auto const system : {SizeSystem::awg, SizeSystem::metric}) {
            SizingOptions options;
            options.system = system;
            auto const result = sizing(boat, options);
            if (!result.left.empty()) { // then the thickest copper and every rating leave it as it is
                CHECK_FALSE(complaints(result.bank).empty());
                continue;
            }
            ++sized;
            CHECK(complaints(result.bank).empty());
            check_no_less(result, system);
            CHECK(discharge(result.bank).runtime >= *boat.system.runtime);
        }
    }
    CHECK(sized > 18);
}

TEST_CASE("one string less would not do, however thick the copper: mostly it would not run as long as is wanted") {
    int varied = 0;
    int too_short = 0;
    for (unsigned seed = 100; seed < 115; ++seed) {
        CAPTURE(seed);
        auto const boat = RandomBoat(seed).make();
        auto const result = sizing(boat);
        REQUIRE(result.strings);
        if (!result.left.empty() || result.strings->chosen == 1) continue;
        ++varied;
        auto less = with_strings(boat, result.strings->chosen - 1);
        for (auto* runs : {&less.jumpers, &less.cables})
            for (auto& run : *runs)
                run.conductor.size = Awg{-3};
        CHECK_FALSE(complaints(less).empty());
        CHECK_FALSE(result.strings->refused.empty());
        too_short += discharge(less).runtime < *boat.system.runtime;
    }
    CHECK(varied > 1);
    CHECK(too_short > varied / 2);
}

TEST_CASE("a longer run, a longer trip and a warmer day never ask for less") {
    auto boat = RandomBoat(7).make();
    boat.system.runtime = 0.5_h;
    auto const usual = sizing(boat);
    auto const area = [](SizingResult const& result) { return result.groups.front().size->area(); };
    auto longer = boat;
    for (auto& run : longer.cables)
        *run.conductor.length = *run.conductor.length * 2.0;
    CHECK(area(sizing(longer)) >= area(usual));
    SizingOptions options;
    options.ambient = 45_degC;
    CHECK(area(sizing(boat, options)) >= area(usual));
    options.ambient.reset();
    options.runtime = 6_h;
    CHECK(sizing(boat, options).strings->chosen > usual.strings->chosen);
}

TEST_CASE("a charger that is not plugged in still needs its fuse and its copper") {
    auto boat = RandomBoat(3).make();
    Charger charger;
    charger.id = "ch";
    charger.voltage = *boat.system.voltage * 1.2;
    charger.current = 20_A;
    boat.chargers = {charger};
    ProtectiveDevice fuse;
    fuse.id = "F";
    fuse.rating = 30_A;
    fuse.interrupts = 10_kA;
    fuse.voltage = 65_V;
    boat.fuses = {fuse};
    auto const run = [](char const* id, char const* from, std::string const& to) {
        Run r;
        r.conductor.id = id;
        r.conductor.size = Awg{10};
        r.conductor.length = 0.3_m;
        r.conductor.insulation = 105_degC;
        r.from = from;
        r.to = to;
        return r;
    };
    boat.cables.push_back(run("c1", "F.line", boat.cables.front().from));
    boat.cables.push_back(run("c2", "F.load", "ch.1+"));
    boat.cables.push_back(run("c3", "ch.1-", boat.cables[2].to));
    auto const result = sizing(boat);
    for (auto const& fuse_now : result.bank.fuses)
        CHECK(*fuse_now.rating >= 20_A);
}
