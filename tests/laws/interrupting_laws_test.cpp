// What `check` says a breaker or fuse must interrupt is what `short-circuit` says, in any bank; and it is never below a
// bolted fault behind the device, nor below ABYC E-11's table.
#include "bankwright/analyses/prospective_current.hpp"
#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/devices/protection_rating.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/units/literals.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <random>
#include <string>
#include <utility>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

Run run(std::string id, std::string from, std::string to, std::optional<Length> length, Awg gauge = 2_AWG) {
    Run made;
    made.conductor.id = std::move(id);
    made.from = std::move(from);
    made.to = std::move(to);
    if (length) {
        made.conductor.size = gauge;
        made.conductor.length = length;
    } else {
        made.conductor.resistance = 0_ohm;
    }
    return made;
}

ProtectiveDevice device(std::string id, Current rating, Current interrupts, std::string trip_class) {
    ProtectiveDevice made;
    made.id = std::move(id);
    made.rating = rating;
    made.interrupts = interrupts;
    made.trip_class = std::move(trip_class);
    return made;
}

void add_lamp(Bank& bank) {
    Load lamp;
    lamp.id = "lamp";
    lamp.current = 5_A;
    bank.loads.push_back(std::move(lamp));
}

// From the breaker to the fuse, by a selector or not, and back, by a shunt or not; with a second battery behind a relay
// or without.
void join(Bank& bank, std::string const& plus, std::string const& minus, bool selector, bool shunt, bool relay,
          int position) {
    if (selector) {
        Selector one;
        one.id = "SEL";
        one.position = static_cast<SelectorPosition>(position);
        bank.selectors.push_back(one);
        bank.cables.push_back(run("tap", "CB.load", "SEL.1", 5_in, 8_AWG));
        bank.cables.push_back(run("tap-2", "SEL.common", "F.line", 5_in, 8_AWG));
    } else {
        bank.cables.push_back(run("tap", "CB.load", "F.line", 5_in, 8_AWG));
    }
    if (shunt) {
        Shunt one;
        one.id = "SH";
        one.resistance = 0.1_mohm;
        bank.shunts.push_back(one);
        bank.cables.push_back(run("back", "lamp-", "SH.2", 6_ft, 8_AWG));
        bank.cables.push_back(run("back-2", "SH.1", minus, 5_in, 2_AWG));
    } else {
        bank.cables.push_back(run("back", "lamp-", minus, 6_ft, 8_AWG));
    }
    if (!relay) return;
    Relay one;
    one.id = "REL";
    one.closed = position % 2 == 0;
    bank.relays.push_back(one);
    auto second = bank.batteries.front();
    second.id = "S";
    second.voltage = bank.system.voltage;
    second.role = Role::start;
    bank.batteries.push_back(second);
    bank.jumpers.push_back(run("JR1", plus, "REL.1", 12_in));
    bank.jumpers.push_back(run("JR2", "REL.2", "S+", 12_in));
    bank.jumpers.push_back(run("JR3", "S-", minus, 12_in));
}

// Strings of 12 V batteries with a breaker at the bank and a fuse behind it; what the labels state is drawn.
Bank random_protected_bank(std::uint64_t seed) {
    std::mt19937_64 random(seed);
    auto const among = [&](int least, int most) { return std::uniform_int_distribution<>(least, most)(random); };
    auto const chance = [&](int percent) { return among(1, 100) <= percent; };
    int const series = among(1, 4);
    int const parallel = among(1, 4);
    bool const cranking = chance(60), resistance = chance(30), capacity = chance(80) || (!cranking && !resistance);
    double const amperes = among(200, 1200), ampere_hours = among(20, 400), ohms = among(1, 12) * 1e-3;
    Bank bank;
    bank.system.voltage = 12.0 * series * si::volt;
    auto const id = [](int p, int s) { return "B" + std::to_string(p) + std::to_string(s); };
    for (int p = 0; p < parallel; ++p)
        for (int s = 0; s < series; ++s) {
            Battery battery;
            battery.id = id(p, s);
            battery.chemistry = Chemistry::flooded;
            battery.voltage = 12_V;
            if (capacity) battery.capacity = ampere_hours * 3600.0 * si::coulomb;
            if (cranking) battery.cranking = amperes * si::ampere;
            if (resistance) battery.resistance = ohms * si::ohm;
            bank.batteries.push_back(battery);
            if (s > 0) bank.jumpers.push_back(run("J" + id(p, s), id(p, s - 1) + "+", id(p, s) + "-", 12_in));
            if (p > 0 && s == 0) bank.jumpers.push_back(run("N" + id(p, s), id(p - 1, 0) + "-", id(p, 0) + "-", 12_in));
            if (p > 0 && s == series - 1)
                bank.jumpers.push_back(run("P" + id(p, s), id(p - 1, s) + "+", id(p, s) + "+", 12_in));
        }
    auto const interrupts = [&] { return among(1, 250) * 100.0 * si::ampere; };
    bank.breakers.push_back(device("CB", 100_A, interrupts(), "ul-489"));
    bank.fuses.push_back(device("F", 30_A, interrupts(), "iso-8820-3"));
    bank.cables.push_back(run("feed", id(0, series - 1) + "+", "CB.line", 5_in));
    bank.cables.push_back(run("out", "F.load", "lamp+", 6_ft, 8_AWG));
    add_lamp(bank);
    join(bank, id(0, series - 1) + "+", id(0, 0) + "-", chance(50), chance(50), chance(50), among(0, 3));
    return bank;
}

bool finds_too_little(Findings const& findings, std::string const& device) {
    return std::any_of(findings.begin(), findings.end(), [&](auto const& finding) {
        return finding.rule == "protection/interrupting" && finding.parts.front() == device;
    });
}

} // namespace

TEST_CASE("check and short-circuit never disagree on what a device must interrupt") {
    int too_little = 0, enough = 0;
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        CAPTURE(seed);
        auto const bank = random_protected_bank(seed);
        auto const findings = check(bank).findings;
        for (auto const& duty : short_circuit(bank).devices) {
            CAPTURE(duty.id);
            REQUIRE(duty.suffices.has_value());
            CHECK(finds_too_little(findings, duty.id) == !*duty.suffices);
            ++(*duty.suffices ? enough : too_little);
        }
    }
    CHECK(too_little > 50);
    CHECK(enough > 50);
}

TEST_CASE("what a device must interrupt is no less than a bolted short behind it, nor than E-11's table") {
    for (std::uint64_t seed = 0; seed < 100; ++seed) {
        CAPTURE(seed);
        auto const bank = random_protected_bank(seed);
        auto const devices = short_circuit(bank).devices;
        auto const& main = devices.front(); // breakers stand before fuses
        REQUIRE(main.id == "CB");
        auto const behind = BoltedShorts(bank).at("CB.load", "CB");
        REQUIRE(behind);
        CHECK(main.need.value() >= behind->through_part.value() * (1.0 - 1e-9));
        auto const& battery = bank.batteries.front();
        if (!battery.cranking || battery.resistance) continue;
        auto const series = bank.system.voltage->value() / 12.0;
        auto const strung = bank.batteries.size() - bank.relays.size(); // not the battery behind a relay
        auto const total = battery.cranking->value() * static_cast<double>(strung) / series;
        auto const table = interrupting_need(total * si::ampere, *bank.system.voltage, BreakerPlace::main);
        CHECK(main.need.value() >= table.current.value());
    }
}

// ABYC E-11 as quoted at trawlerforum.com, thread 75323: six 6 V batteries of 2400 A as a bank of 12 V give 7200 A.
TEST_CASE("batteries in series do not add up, parallel strings do") {
    Bank bank;
    bank.system.voltage = 12_V;
    for (int p = 0; p < 3; ++p) {
        auto const string = "B" + std::to_string(p);
        for (auto const* half : {"0", "1"}) {
            Battery battery;
            battery.id = string + half;
            battery.voltage = 6_V;
            battery.resistance = 6.35 / 2400.0 * si::ohm;
            battery.emf = 6.35_V;
            bank.batteries.push_back(battery);
        }
        bank.jumpers.push_back(run("J" + string, string + "0+", string + "1-", {}));
        if (p == 0) continue;
        bank.jumpers.push_back(run("N" + string, "B00-", string + "0-", {}));
        bank.jumpers.push_back(run("P" + string, "B01+", string + "1+", {}));
    }
    bank.breakers.push_back(device("CB", 100_A, 5_kA, "ul-489"));
    bank.cables.push_back(run("feed", "B01+", "CB.line", {}));
    bank.cables.push_back(run("out", "CB.load", "lamp+", {}));
    bank.cables.push_back(run("back", "lamp-", "B00-", {}));
    add_lamp(bank);
    auto const main = short_circuit(bank).devices.front();
    CHECK(main.need.value() == doctest::Approx(7200.0));
    CHECK(main.suffices == false);
    CHECK(finds_too_little(check(bank).findings, "CB"));
}
