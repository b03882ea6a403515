#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/units/literals.hpp"
#include "support/jon_boat.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;
using namespace bankwright::support;

namespace {

// A 24 V bank and a 12 V one that share a negative inside the converter from the one to the other; a lamp of 100 W on
// the 12 V.
Bank two_voltages(double percent) {
    Bank bank;
    bank.batteries = {plain_battery("A", 12.8, 4e-3), plain_battery("B", 12.8, 4e-3), plain_battery("H", 12.6, 5e-3)};
    bank.jumpers = {plain_run("J", "A+", "B-", 0.0)};
    bank.cables = {plain_run("ip", "B+", "DC.in+", 1e-3),  plain_run("in", "DC.in-", "A-", 1e-3),
                   plain_run("op", "DC.out+", "H+", 2e-3), plain_run("on", "DC.out-", "H-", 2e-3),
                   plain_run("lp", "H+", "lamp+", 0.0),    plain_run("ln", "lamp-", "H-", 0.0)};
    auto converter = named<Converter>("DC");
    converter.voltage = 13.6_V;
    converter.power = 240_W;
    converter.isolated = false;
    converter.efficiency = Efficiency::percent(percent);
    bank.converters = {converter};
    auto lamp = named<Load>("lamp");
    lamp.power = 100_W;
    bank.loads = {lamp};
    return bank;
}

PartReading const& part(OperatingPoint const& point, std::string const& id) {
    for (auto const& one : point.parts)
        if (one.id == id) return one;
    throw std::out_of_range(id);
}

double across(OperatingPoint const& point, std::string const& red, std::string const& black) {
    auto const at = [&](std::string const& name) {
        for (auto const& one : point.terminals)
            if (one.name == name && one.voltage) return one.voltage->value();
        return 0.0;
    };
    return at(red) - at(black);
}

} // namespace

TEST_CASE("a converter takes from one bank what it gives to the other, over its efficiency") {
    for (double const percent : {60.0, 90.0, 100.0}) {
        CAPTURE(percent);
        auto const point = operating_point(two_voltages(percent));
        auto const taken = across(point, "DC.in+", "DC.in-") * part(point, "ip").current.value();
        auto const given = across(point, "DC.out+", "DC.out-") * part(point, "op").current.value();
        CHECK(given > 100.0); // 13.6 V over 9 milliohm to 12.6 V would be more than it can give
        CHECK(given <= 240.0 * 1.001);
        CHECK(taken == doctest::Approx(given / (percent / 100.0)).epsilon(1e-9));
    }
}

TEST_CASE("through time a converter empties the bank that it takes from, and a full battery takes next to nothing") {
    auto bank = two_voltages(90.0);
    for (auto& battery : bank.batteries) {
        battery.emf.reset();
        battery.chemistry = Chemistry::agm;
        battery.capacity = 100_Ah;
    }
    bank.loads.clear(); // first the battery alone: full, it takes next to nothing
    bank.cables.resize(4);
    DischargeOptions hour;
    hour.longest = 1_h;
    auto lamp = named<Load>("idle");
    lamp.power = 1_W;
    bank.loads = {lamp};
    bank.cables.push_back(plain_run("lp", "H+", "idle+", 0.0));
    bank.cables.push_back(plain_run("ln", "idle-", "H-", 0.0));
    auto const idle = discharge(bank, hour);
    CHECK(idle.samples.back().charge[0].in_percent() > 99.5);
    CHECK(idle.samples.back().charge[2].in_percent() > 99.9);
    bank.loads[0].power = 100_W; // then under a load: the 24 V bank gives it, over the efficiency
    auto const run = discharge(bank, hour);
    CHECK(run.samples.back().charge[2].in_percent() > 99.9);
    auto const given = run.given[0].value() / 3600.0; // [Ah]
    CHECK(given == doctest::Approx(100.0 / 0.9 / 25.4).epsilon(0.02));
    auto const energy = run.energy;
    CHECK((energy.given - energy.battery_heat - energy.wiring_heat - energy.used + energy.charged).value() ==
          doctest::Approx(0.0).scale(energy.given.value()).epsilon(1e-6));
}

TEST_CASE("a motor's control lets no more through than its max_current, at a moment and through time") {
    auto bank = jon_boat();
    auto const free = part(operating_point(bank), "troll").current;
    bank.motors[0].max_current = free * 0.5;
    CHECK(part(operating_point(bank), "troll").current.value() == doctest::Approx(free.value() * 0.5));
    bank.motors[0].max_current = free * 1.5; // and one that is never reached changes nothing
    CHECK(part(operating_point(bank), "troll").current.value() == doctest::Approx(free.value()));
    for (auto& battery : bank.batteries) {
        battery.emf.reset();
        battery.chemistry = Chemistry::agm;
        battery.capacity = 100_Ah;
    }
    DischargeOptions hour;
    hour.longest = 1_h;
    bank.motors[0].max_current = 20_A;
    CHECK(discharge(bank, hour).given[0].value() == doctest::Approx(20.0 * 3600.0).epsilon(1e-6));
}
