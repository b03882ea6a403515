// ABYC E-11 Table IX, 12 V and 3 percent, as quoted at suremarineservice.com, against `sizing`: nothing comes out
// thinner than the table has it. Of 10 percent (Table X) no whole copy was at hand: the standard's own formula over
// least areas stands for it.
#include "bankwright/devices/conductor_voltage_drop.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/sizing/sizing.hpp"
#include "bankwright/units/literals.hpp"

#include <array>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

constexpr std::array feet{10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 170};
struct Row {
    int amperes;
    std::array<int, 19> gauges; // 0 is 1/0, -1 is 2/0
};
constexpr std::array<Row, 4> table_ix{{
    {5, {18, 16, 14, 12, 12, 10, 10, 10, 8, 8, 8, 6, 6, 6, 6, 6, 6, 6, 6}},
    {10, {14, 12, 10, 10, 10, 8, 6, 6, 6, 6, 4, 4, 4, 4, 2, 2, 2, 2, 2}},
    {15, {12, 10, 10, 8, 8, 6, 6, 6, 4, 4, 2, 2, 2, 2, 2, 1, 1, 1, 1}},
    {20, {10, 10, 8, 6, 6, 6, 4, 4, 2, 2, 2, 2, 1, 1, 1, 0, 0, 0, -1}},
}};

// A battery without resistance, a fuse on its post, and a load at the end of two alike cables.
Bank circuit(double amperes, double out_and_back_feet, Awg gauge) {
    auto const length = out_and_back_feet / 2.0 * 0.3048 * si::meter;
    Bank bank;
    bank.system.voltage = 12_V;
    bank.system.joint = 0_ohm;
    Battery battery;
    battery.id = "A";
    battery.voltage = 12_V;
    battery.resistance = 1_uohm; // none to speak of
    battery.emf = 12_V;
    bank.batteries.push_back(battery);
    ProtectiveDevice fuse;
    fuse.id = "F";
    fuse.rating = 30_A;
    bank.fuses.push_back(fuse);
    Run jumper{{}, "A+", "F.line"};
    jumper.conductor.id = "J";
    jumper.conductor.resistance = 0_ohm;
    bank.jumpers.push_back(jumper);
    Run cable{{}, "F.load", "lamp+"};
    cable.conductor.id = "out";
    cable.conductor.size = gauge;
    cable.conductor.length = length;
    cable.conductor.insulation = 105_degC;
    bank.cables.push_back(cable);
    cable.conductor.id = "back";
    cable.from = "lamp-";
    cable.to = "A-";
    bank.cables.push_back(cable);
    Load lamp;
    lamp.id = "lamp";
    lamp.current = amperes * si::ampere;
    bank.loads.push_back(lamp);
    return bank;
}

bool loses_too_much(Bank const& bank, Level level) {
    for (auto const& finding : check(bank, {{"conductor"}, {}}).findings)
        if (finding.rule == "conductor/voltage-drop" && finding.level >= level) return true;
    return false;
}

} // namespace

TEST_CASE("size is never thinner than the published table of 3 percent") {
    for (auto const& row : table_ix)
        for (std::size_t i = 0; i < feet.size(); i += 3) { // a third of the cells: each is a search
            CAPTURE(row.amperes);
            CAPTURE(feet[i]);
            auto const sized = sizing(circuit(row.amperes, feet[i], 4_AWG));
            CHECK(sized.bank.cables.front().conductor.size->gauge()->number <= row.gauges[i]);
        }
}

TEST_CASE("a gauge thinner than the table of 3 percent draws the warning, in every cell") {
    for (auto const& row : table_ix)
        for (std::size_t i = 0; i < feet.size(); ++i) {
            if (row.gauges[i] == 18) continue; // nothing is thinner
            CAPTURE(row.amperes);
            CAPTURE(feet[i]);
            // The next size that the table knows: it has no odd one but 1.
            auto const thinner = row.gauges[i] >= 2 ? row.gauges[i] + 2 : row.gauges[i] + 1;
            CHECK(loses_too_much(circuit(row.amperes, feet[i], Awg{thinner}), Level::warning));
        }
}

TEST_CASE("where the formula over least areas has more than 10 percent, it is an error") {
    for (int gauge : {18, 16, 14, 12, 10, 8, 6, 4, 2})
        for (double amperes : {5.0, 10.0, 20.0, 25.0})
            for (int length : feet) {
                Voltage const lost = abyc_drop(amperes * si::ampere, length * 0.3048 * si::meter, Awg{gauge});
                if (lost.value() <= 1.2001 || lost.value() > 8.0) continue;
                CAPTURE(gauge);
                CAPTURE(amperes);
                CAPTURE(length);
                CHECK(loses_too_much(circuit(amperes, length, Awg{gauge}), Level::error));
            }
}
