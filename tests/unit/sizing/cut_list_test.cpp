#include "bankwright/sizing/cut_list.hpp"
#include "unit/sizing/random_boats.hpp"

#include <map>
#include <string>
#include <utility>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

TEST_CASE("totals are the sums of what is cut, and no conductor is forgotten") {
    for (unsigned seed = 0; seed < 30; ++seed) {
        CAPTURE(seed);
        auto const bank = boats::RandomBoat(seed).make();
        auto const list = cut_list(bank);
        CHECK(list.cuts.size() == bank.jumpers.size() + bank.cables.size());
        std::map<std::pair<double, std::string>, std::pair<int, double>> sums;
        double run = 0.0;
        for (auto const* runs : {&bank.jumpers, &bank.cables})
            for (auto const& one : *runs) {
                auto& sum = sums[{one.conductor.size->area().value(), one.conductor.color.value_or("")}];
                ++sum.first;
                sum.second += one.conductor.length->value() * 1.1;
                run += one.conductor.length->value();
            }
        CHECK(list.wire.size() == sums.size());
        double total = 0.0;
        for (auto const& wire : list.wire) {
            auto const sum = sums.at({wire.size.area().value(), wire.color});
            CHECK(wire.pieces == sum.first);
            CHECK(wire.length.value() == doctest::Approx(sum.second));
            total += wire.length.value();
        }
        CHECK(total == doctest::Approx(1.1 * run));
        int ends = 0;
        int rings = 0;
        for (auto const& end : list.ends) {
            ends += end.count;
            if (end.what == "ring terminal") rings += end.count;
        }
        CHECK(ends == 2 * static_cast<int>(list.cuts.size()));
        CHECK(list.heat_shrink.value() == doctest::Approx(rings * 0.0254));
        double mass = 0.0;
        for (auto const& battery : bank.batteries)
            mass += battery.mass->value();
        REQUIRE(list.battery_mass);
        CHECK(list.battery_mass->value() == doctest::Approx(mass));
    }
}

TEST_CASE("a mass that the file does not give is not made up, nor a conductor without a length cut") {
    auto bank = boats::RandomBoat(5).make();
    bank.batteries.front().mass.reset();
    bank.cables.front().conductor.length.reset();
    auto const list = cut_list(bank);
    CHECK_FALSE(list.battery_mass);
    CHECK(list.not_cut == std::vector<std::string>{"feed"});
}

// Facts of the trade: common practice, no source.
TEST_CASE("a receptacle asks for its hole, and its conductors are stripped, not ringed") {
    Bank bank;
    Connector plug;
    plug.id = "bow";
    bank.connectors = {plug};
    Run run;
    run.conductor.id = "w";
    run.conductor.size = Awg{6};
    run.conductor.length = 1_m;
    run.from = "bow+";
    run.to = "A+";
    bank.cables = {run};
    Battery battery;
    battery.id = "A";
    bank.batteries = {battery};
    auto const list = cut_list(bank);
    CHECK(list.receptacle_holes == 1);
    REQUIRE(list.ends.size() == 2);
    CHECK(list.ends[0].what == "stripped end");
    CHECK(list.ends[0].on.find("1/4 in stripped") != std::string::npos);
    CHECK(list.ends[1].what == "ring terminal");
    CHECK(list.ends[1].on == "battery post");
}
