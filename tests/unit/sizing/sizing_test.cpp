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
        if (finding.rule != "connection/too-thick" && finding.level != Level::note && !finding.accepted)
            all.insert(finding.rule);
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
        CHECK_FALSE(group.refused.empty());
        // a breaker that runs for hours is held to 80 % even where its class is not known
        if (!group.size && *smaller.system.runtime >= 3_h) continue;
        CHECK(complaints(smaller).size() > now);
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

namespace {

SizingOptions keeping_strings() {
    SizingOptions options;
    options.keep_strings = true;
    return options;
}

Current rating_of(Bank const& bank) { return *bank.breakers.front().rating; }

// Of a bank that draws what is on its nameplate, whatever its copper: motors become loads of their nameplate current.
Bank at_its_nameplates(Bank bank) {
    for (auto const& motor : bank.motors) {
        Load load;
        load.id = motor.id;
        load.current = motor.max_current ? motor.max_current : motor.current;
        bank.loads.push_back(load);
    }
    bank.motors.clear();
    return bank;
}

} // namespace

TEST_CASE("with every motor at its nameplate what is chosen pleases every rule, and no smaller size in stock does") {
    int smaller_tried = 0;
    for (unsigned seed = 200; seed < 224; ++seed) {
        CAPTURE(seed);
        auto boat = RandomBoat(seed).make();
        boat.system.drop = Ratio::percent(3.0 + seed % 30);
        if (seed % 3 == 0)
            boat.system.stock = {WireSize(Awg{10}), WireSize(Awg{8}), WireSize(Awg{4}), WireSize(Awg{-1})};
        auto const result = sizing(boat, keeping_strings());
        CHECK(rating_of(result.bank) >= *boat.motors.front().current);
        std::set<std::string> const left = [&] {
            std::set<std::string> rules;
            for (auto const& finding : result.left)
                rules.insert(finding.rule);
            return rules;
        }();
        auto const against = [&](Bank const& bank) { // of what draws its nameplate, or as much more as it takes
            std::set<std::string> rules;
            for (auto const& one : {at_its_nameplates(bank), bank})
                for (auto const& finding : check(one, {{"protection", "connection", "conductor"}, {}}).findings)
                    if (finding.level != Level::note && finding.rule != "connection/too-thick" &&
                        left.count(finding.rule) == 0)
                        rules.insert(finding.rule);
            return rules;
        };
        CHECK(against(result.bank).empty());
        for (auto const& group : result.groups) {
            if (!group.size || group.smaller.empty()) continue;
            auto const stock = stocked_sizes(boat.system, SizeSystem::awg);
            auto const smaller = with_size(
                result.bank, group.parts,
                before(stock, *group.size, [](WireSize a, WireSize b) { return a.area() < b.area() * (1.0 - 1e-9); }));
            bool const other_rule = std::none_of(group.refused.begin(), group.refused.end(), [](auto const& finding) {
                return finding.rule.rfind("conductor/", 0) == 0 || finding.rule.rfind("protection/", 0) == 0 ||
                       finding.rule.rfind("connection/", 0) == 0;
            });
            if (other_rule) continue; // its run time or a load's least voltage asks for it
            ++smaller_tried;
            CHECK_FALSE(against(smaller).empty());
        }
    }
    CHECK(smaller_tried > 8);
}

TEST_CASE("a motor whose control holds it to its nameplate needs no more than the next standard size above it") {
    for (unsigned seed = 300; seed < 308; ++seed) {
        CAPTURE(seed);
        auto boat = RandomBoat(seed).make();
        boat.system.runtime = 1_h;
        boat.motors.front().max_current = boat.motors.front().current;
        auto const result = sizing(boat);
        if (!result.left.empty()) continue;
        CHECK(rating_of(result.bank) >= *boat.motors.front().current);
        auto const smaller =
            before(standard_ratings(), rating_of(result.bank), [](Current a, Current b) { return a < b; });
        CHECK(smaller < *boat.motors.front().current);
    }
}

TEST_CASE("what is fixed stays, and what is not in stock is not chosen") {
    for (unsigned seed = 400; seed < 406; ++seed) {
        CAPTURE(seed);
        auto boat = RandomBoat(seed).make();
        boat.system.stock = {WireSize(Awg{8}), WireSize(Awg{4}), WireSize(Awg{-1})};
        boat.cables.back().conductor.size = Awg{5};
        boat.cables.back().conductor.fixed = true;
        boat.breakers.front().fixed = true;
        auto const result = sizing(boat);
        for (auto const* runs : {&result.bank.jumpers, &result.bank.cables})
            for (auto const& run : *runs) {
                if (run.conductor.id == boat.cables.back().conductor.id) {
                    CHECK(run.conductor.size == boat.cables.back().conductor.size);
                    continue;
                }
                auto const& stock = *boat.system.stock;
                CHECK(std::count(stock.begin(), stock.end(), *run.conductor.size) == 1);
            }
        CHECK(rating_of(result.bank) == rating_of(boat));
    }
}

TEST_CASE("the size of the other system holds at least as much copper") {
    for (auto const system : {SizeSystem::awg, SizeSystem::metric})
        for (auto const& size : standard_wire_sizes(system))
            if (auto const other = at_least_as_good(size)) CHECK(other->area() >= size.area());
    CHECK(at_least_as_good(Awg{6}) == WireSize(16e-6 * si::square_meter)); // 13.3 mm2 by ASTM B258
    CHECK(at_least_as_good(WireSize(16e-6 * si::square_meter)) == WireSize(Awg{4}));
}

TEST_CASE("a breaker behind a load that runs for hours is loaded to 80 % at most") {
    auto boat = RandomBoat(5).make();
    boat.system.runtime = 4_h;
    boat.motors.front().current = boat.motors.front().max_current = 48.5_A;
    auto const result = sizing(boat, keeping_strings());
    CHECK(rating_of(result.bank) >= 48.5_A / 0.8);
}
