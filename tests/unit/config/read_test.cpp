#include "bankwright/config/read.hpp"
#include "support/findings_text.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using test::lines_of;
using test::place;
using Lines = std::vector<std::string>;

TEST_SUITE_BEGIN("config/read");

namespace {

// Invented: the smallest bank that has every kind of part.
constexpr std::string_view every_kind = R"(bankwright = 1
name = "one of each"

[system]
voltage = "12 V"
ambient = "77 degF"
runtime = "3 h"
joint = "0.1 mohm"

[batteries]
A = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah", made = 2024-03-01 }
[jumpers]
J = { from = "A+", to = "BUS", size = "6 AWG", length = "12 in", tinned = true }
[cables]
neg = { from = "A-", to = "L-", resistance = "1 mohm", color = "black" }
[breakers]
CB = { rating = "60 A", state = "open" }
[fuses]
F = { rating = "30 A", class = "iso-8820-3" }
[switches]
S = {}
[busbars]
BUS = { studs = 4 }
[connectors]
bow = { contact = "0.5 mohm", state = "apart" }
[motors]
M = { voltage = "12 V", current = "30 A", control = "direct" }
[loads]
L = { power = "60 W" }
[chargers]
CH = { outputs = 2, isolated = false, connected = true }

[[accept]]
rule = "protection/too-far"
part = "neg"
reason = "in the box"
)";

} // namespace

TEST_CASE("a bank with one part of each kind reads clean, with every key in its member") {
    auto const result = read(every_kind);
    CHECK(lines_of(result.findings) == Lines{});
    CHECK(result.readable);
    CHECK(result.left_out.empty());
    Bank const& bank = result.bank;
    CHECK(bank.name == "one of each");
    CHECK(bank.system.voltage->value() == 12.0);
    CHECK(in_celsius(bank.system.ambient) == doctest::Approx(25.0));
    CHECK(bank.system.runtime->value() == 10800.0);
    CHECK(bank.system.joint.value() == 1e-4);
    REQUIRE(bank.batteries.size() == 1);
    CHECK(bank.batteries[0].id == "A");
    CHECK(bank.batteries[0].chemistry == Chemistry::agm);
    CHECK(bank.batteries[0].capacity->value() == 360000.0);
    CHECK(bank.batteries[0].made == Date{2024, 3, 1});
    REQUIRE(bank.jumpers.size() == 1);
    CHECK(bank.jumpers[0].from == "A+");
    CHECK(bank.jumpers[0].to == "BUS");
    CHECK(bank.jumpers[0].conductor.size->gauge() == Awg{6});
    CHECK(bank.jumpers[0].conductor.length->value() == doctest::Approx(0.3048)); // 12 x 25.4 mm
    CHECK(bank.jumpers[0].conductor.tinned == true);
    REQUIRE(bank.cables.size() == 1);
    CHECK(bank.cables[0].conductor.color == "black");
    REQUIRE(bank.breakers.size() == 1);
    CHECK(bank.breakers[0].closed == false);
    REQUIRE(bank.fuses.size() == 1);
    CHECK(bank.fuses[0].trip_class == "iso-8820-3");
    CHECK_FALSE(bank.fuses[0].closed.has_value());
    CHECK(bank.switches.size() == 1);
    REQUIRE(bank.busbars.size() == 1);
    CHECK(bank.busbars[0].studs == 4);
    REQUIRE(bank.connectors.size() == 1);
    CHECK(bank.connectors[0].mated == false);
    REQUIRE(bank.motors.size() == 1);
    CHECK(bank.motors[0].control == SpeedControl::direct);
    REQUIRE(bank.loads.size() == 1);
    CHECK(bank.loads[0].power->value() == 60.0);
    REQUIRE(bank.chargers.size() == 1);
    CHECK(bank.chargers[0].outputs == 2);
    CHECK(bank.chargers[0].isolated == false);
    CHECK(bank.chargers[0].connected == true);
    CHECK(bank.accepted == std::vector<Acceptance>{{"protection/too-far", "neg", "in the box"}});
}

TEST_CASE("sub-tables, dotted keys and inline tables say the same") {
    auto const inline_bank = read(R"(bankwright = 1
[batteries]
A = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah" }
B = { chemistry = "gel", voltage = "6 V", capacity = "90 Ah" }
)");
    auto const sub_tables = read(R"(bankwright = 1
[batteries.A]
chemistry = "agm"
voltage = "12 V"
capacity = "100 Ah"
[batteries]
B.chemistry = "gel"
B.voltage = "6 V"
B.capacity = "90 Ah"
)");
    CHECK(lines_of(inline_bank.findings) == Lines{});
    CHECK(lines_of(sub_tables.findings) == Lines{});
    CHECK(inline_bank.bank == sub_tables.bank);
}

TEST_CASE("parts come in the author's order, not in the alphabet's") {
    auto const result = read(R"(bankwright = 1
[batteries]
Z = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah" }
M = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah" }
[jumpers]
[batteries.A]
chemistry = "agm"
voltage = "12 V"
capacity = "100 Ah"
)");
    CHECK(lines_of(result.findings) == Lines{});
    REQUIRE(result.bank.batteries.size() == 3);
    CHECK(result.bank.batteries[0].id == "Z");
    CHECK(result.bank.batteries[1].id == "M");
    CHECK(result.bank.batteries[2].id == "A");
}

TEST_CASE("the source map knows each part, key, model, the system and accepted findings") {
    auto const result = read(every_kind);
    auto const where = [&](std::string const& part, std::string const& key = {}) {
        auto const region = result.map.find(part, key);
        return region ? place(*region) : std::string("nowhere");
    };
    CHECK(where("", "name") == "2:1-2:21");
    CHECK(where("[system]") == "4:1-4:9");
    CHECK(where("[system]", "voltage") == "5:1-5:17");
    CHECK(where("A") == "11:1-11:84");
    CHECK(where("A", "chemistry") == "11:7-11:24");
    CHECK(where("A", "made") == "11:65-11:82");
    CHECK(where("A", "charge") == "11:1-11:84"); // not stated: the part as a whole
    CHECK(where("S") == "21:1-21:7");
    CHECK(where("[[accept]] 1") == "33:1-33:11");
    CHECK(where("[[accept]] 1", "part") == "35:1-35:13");
    CHECK(where("nobody") == "nowhere");
}

TEST_CASE("a sub-table's place is its header, a key's place its own line") {
    auto const result = read(
        "bankwright = 1\n  [batteries . A] # aft\n\tchemistry = \"agm\"\nvoltage = \"12 V\"\ncapacity = \"90 Ah\"\n");
    CHECK(lines_of(result.findings) == Lines{});
    CHECK(place(*result.map.find("A")) == "2:3-2:18");
    CHECK(place(*result.map.find("A", "chemistry")) == "3:2-3:19"); // a tab is one column
}

TEST_CASE("columns count characters, not bytes") {
    auto const result =
        read("bankwright = 1\nname = \"Möwe ⚓\"\n[loads]\nL = { resistance = \"2 Ω\", pwoer = \"3 W\" }\n");
    CHECK(lines_of(result.findings) == Lines{"4:27-4:40 file/unknown-key L.pwoer"});
    CHECK(place(*result.map.find("", "name")) == "2:1-2:16");
    REQUIRE(result.bank.loads.size() == 1); // it keeps its other keys
    CHECK(result.bank.loads[0].resistance->value() == 2.0);
}

TEST_CASE("line ends of CR LF and a byte order mark change no position") {
    std::string text(every_kind);
    std::string crlf = "\xEF\xBB\xBF";
    for (char const c : text)
        crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
    auto const plain = read(text);
    auto const windows = read(crlf);
    CHECK(lines_of(windows.findings) == Lines{});
    CHECK(windows.bank == plain.bank);
    CHECK(windows.map.find("A", "made") == plain.map.find("A", "made"));
    CHECK(windows.map.find("", "bankwright") == Region{{1, 1}, {1, 15}});
}

TEST_CASE("other spellings of units are read") {
    auto const result = read("bankwright = 1\n[cables]\nc = { from = \"A\", to = \"B\", size = \"16 mm²\", length = "
                             "\"1 m\", joint = \"0.1 mΩ\", "
                             "temperature = \"30 °C\" }\n[busbars]\nA = {}\nB = {}\n");
    CHECK(lines_of(result.findings) == Lines{});
    REQUIRE(result.bank.cables.size() == 1);
    CHECK(result.bank.cables[0].conductor.size->area().value() == doctest::Approx(16e-6));
    CHECK(result.bank.cables[0].conductor.joint->value() == 1e-4);
    CHECK(in_celsius(*result.bank.cables[0].conductor.temperature) == doctest::Approx(30.0));
}

TEST_CASE("an empty file lacks only its version") {
    CHECK(lines_of(read("").findings) == Lines{"1:1-1:1 file/missing-key"});
    CHECK(lines_of(read("# nothing\n").findings) == Lines{"1:1-1:1 file/missing-key"});
}

TEST_CASE("a file of another version is not guessed at") {
    auto const result = read("bankwright = 2\n[batteries]\nA = { voltage = 12 }\n");
    REQUIRE(result.findings.size() == 1);
    CHECK(result.findings[0].rule == "file/bad-value");
    CHECK(result.findings[0].message == "format version 2; this bankwright reads version 1");
    CHECK(place(*result.findings[0].region) == "1:1-1:15");
    CHECK_FALSE(result.readable);
    CHECK(result.bank == Bank{});
}

TEST_SUITE_END();
