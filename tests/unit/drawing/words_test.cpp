#include "bankwright/drawing/words.hpp"
#include "bankwright/units/literals.hpp"

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

std::string in_words(WireSize size, Length length) {
    Conductor wire;
    wire.size = size;
    wire.length = length;
    return drawing::size_and_length(wire);
}

} // namespace

TEST_CASE("wire by gauge is measured in feet and inches, wire by area in meters") {
    CHECK(in_words(6_AWG, 17_ft) == "6 AWG 17 ft");
    CHECK(in_words(6_AWG, 12_in) == "6 AWG 12 in");
    CHECK(in_words(6_AWG, 2_ft) == "6 AWG 2 ft");
    CHECK(in_words(WireSize(Awg{-1}), 12.5_ft) == "2/0 AWG 12.5 ft");
    CHECK(in_words(16_mm2, 2.5_m) == "16 mm\u00b2 2.5 m");
    CHECK(in_words(16_mm2, 0.3_m) == "16 mm\u00b2 30 cm");
}

TEST_CASE("a conductor of which only the resistance is known says that") {
    Conductor wire;
    CHECK(drawing::size_and_length(wire).empty());
    wire.resistance = 4_mohm;
    CHECK(drawing::size_and_length(wire) == "4 m\u03a9");
}

TEST_CASE("nameplates say what the file says and no more") {
    Battery battery;
    CHECK(drawing::nameplate(battery).empty());
    battery.chemistry = Chemistry::agm;
    battery.voltage = 12_V;
    battery.capacity = 100_Ah;
    CHECK(drawing::nameplate(battery) == "12 V AGM 100 Ah");
    Busbar busbar;
    busbar.rating = 150_A;
    CHECK(drawing::nameplate(busbar) == "150 A");
    busbar.studs = 6;
    CHECK(drawing::nameplate(busbar) == "6 studs, 150 A");
    Charger charger;
    CHECK(drawing::nameplate(charger) == "off");
    charger.voltage = 57.6_V;
    charger.connected = true;
    CHECK(drawing::nameplate(charger) == "57.6 V");
}

TEST_CASE("currents read as on a clamp, without a sign, and what rounding has left is none") {
    CHECK(drawing::printed_amperes(-3e-14) == "0 A");
    CHECK(drawing::printed_amperes(-52.08) == "52.1 A");
    CHECK(drawing::printed_amperes(0.08687) == "86.9 mA");
    CHECK(drawing::printed_amperes(448.1) == "448 A");
    CHECK(drawing::printed_amperes(2106.0) == "2.11 kA");
}

TEST_CASE("voltages read as on a meter") {
    CHECK(drawing::printed_volts(1e-12) == "0 V");
    CHECK(drawing::printed_volts(2.866e-4) == "0.3 mV");
    CHECK(drawing::printed_volts(-0.3759) == "-376 mV");
    CHECK(drawing::printed_volts(37.7) == "37.70 V");
    CHECK(drawing::printed_volts(-12.826) == "-12.83 V");
    CHECK(drawing::printed_volts(120.04) == "120.0 V");
}
