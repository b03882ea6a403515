// Each kind of mistake that a person makes in a bank file: which rule, at which place, and how many findings.
#include "bankwright/config/read.hpp"
#include "support/findings_text.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using test::lines_of;
using Lines = std::vector<std::string>;

TEST_SUITE_BEGIN("config/read: mistakes");

namespace {

// Invented. Two batteries in series and a load; `{}` is replaced by further lines, from line 9 on.
std::string with(std::string const& more) {
    return "bankwright = 1\n"
           "[batteries]\n"
           "A = { chemistry = \"agm\", voltage = \"12 V\", capacity = \"100 Ah\" }\n"
           "B = { chemistry = \"agm\", voltage = \"12 V\", capacity = \"100 Ah\" }\n"
           "[jumpers]\n"
           "J = { from = \"A+\", to = \"B-\", resistance = \"1 mohm\" }\n"
           "[loads]\n"
           "L = { power = \"60 W\" }\n" +
           more;
}

ReadResult read_with(std::string const& more) { return read(with(more)); }

std::string message(ReadResult const& result) { return result.findings.empty() ? "" : result.findings.front().message; }
std::string help(ReadResult const& result) { return result.findings.empty() ? "" : result.findings.front().help; }

} // namespace

TEST_CASE("the bank that these tests spoil reads clean") { CHECK(lines_of(read_with("").findings) == Lines{}); }

TEST_CASE("a misspelled key is named with the nearest one") {
    auto const result = read_with("M = { power = \"1 W\", min_volts = \"10 V\", max_voltag = \"16 V\" }\n");
    CHECK(lines_of(result.findings) ==
          Lines{"9:22-9:40 file/unknown-key M.min_volts", "9:42-9:61 file/unknown-key M.max_voltag"});
    CHECK(message(result) == "`min_volts` is not a key of load `M`");
    CHECK(result.findings[1].help == "did you mean `max_voltage`?");
    REQUIRE(result.bank.loads.size() == 2);
    CHECK(result.bank.loads[1].power->value() == 1.0);
}

TEST_CASE("a key that resembles none is answered with all of them") {
    auto const result = read_with("[switches]\nS = { handle = \"red\" }\n");
    CHECK(lines_of(result.findings) == Lines{"10:7-10:21 file/unknown-key S.handle"});
    CHECK(help(result) == "its keys are `model`, `rating`, `resistance`, `state`, `place` and `price`");
}

TEST_CASE("a misspelled section is one finding, and what is landed on its parts is let pass") {
    auto const result = read_with(
        "[bateries.C]\nvoltage = \"12 V\"\n[cables]\nc = { from = \"C+\", to = \"L+\", resistance = \"1 mohm\" }\n");
    CHECK(lines_of(result.findings) == Lines{"9:1-9:13 file/unknown-key .bateries"});
    CHECK(help(result) == "did you mean `batteries`?");
}

TEST_CASE("what a part cannot do without is missed") {
    auto const result = read_with("M = {}\n"
                                  "[batteries.C]\n"
                                  "[motors]\n"
                                  "T = { voltage = \"12 V\" }\n"
                                  "[breakers]\n"
                                  "CB = { resistance = \"1 mohm\" }\n"
                                  "[cables]\n"
                                  "c = { size = \"6 AWG\" }\n");
    CHECK(lines_of(result.findings) ==
          Lines{"9:1-9:7 file/missing-key M", "10:1-10:14 file/missing-key C", "10:1-10:14 file/missing-key C",
                "10:1-10:14 file/missing-key C", "12:1-12:25 file/missing-key T", "14:1-14:31 file/missing-key CB",
                "16:1-16:23 file/missing-key c", "16:1-16:23 file/missing-key c", "16:1-16:23 file/missing-key c"});
    CHECK(message(result) == "load `M` lacks `current`, or `power`, or `resistance`");
    CHECK(result.findings[1].message == "battery `C` lacks `voltage`, or `chemistry` and `cells`");
    CHECK(result.findings[8].message == "cable `c` lacks `length`: it needs `resistance`, or `size` and `length`");
    CHECK(result.findings[8].help == "state it, for example `length = \"17 ft\"`");
    CHECK(result.left_out == std::vector<std::string>{"M", "C", "T", "CB", "c"});
}

TEST_CASE("a number without a unit is a finding, never a guess") {
    auto const result = read_with("M = { current = 4 }\nN = { current = \"4\" }\nO = { current = 4.5 }\n");
    CHECK(lines_of(result.findings) == Lines{"9:7-9:18 file/bad-unit M.current", "10:7-10:20 file/bad-unit N.current",
                                             "11:7-11:20 file/bad-unit O.current"});
    CHECK(message(result) == "`current` of load `M` is 4, without a unit; expected a current such as \"4 A\"");
    CHECK(help(result) == "write it with its unit, as in `current = \"4 A\"`");
    CHECK(result.bank.loads.size() == 1); // each of the three cannot do without its current
}

TEST_CASE("an unknown unit, and the unit of another quantity") {
    auto const result = read_with("M = { current = \"4 amps\" }\nN = { current = \"4 V\" }\n");
    CHECK(lines_of(result.findings) == Lines{"9:7-9:25 file/bad-unit M.current", "10:7-10:22 file/bad-unit N.current"});
}

TEST_CASE("a value of the wrong kind") {
    auto const result = read_with(
        "[cables]\n"
        "c = { from = \"A-\", to = \"L-\", resistance = \"1 mohm\", tinned = \"true\", bundle = 3.0, color = 7 }\n"
        "[batteries.C]\n"
        "voltage = \"12 V\"\nchemistry = \"agm\"\ncapacity = true\nmade = \"2024-03-01\"\n");
    CHECK(lines_of(result.findings) ==
          Lines{"10:54-10:69 file/bad-value c.tinned", "10:71-10:83 file/bad-value c.bundle",
                "10:85-10:94 file/bad-value c.color", "14:1-14:16 file/bad-value C.capacity",
                "15:1-15:20 file/bad-value C.made"});
    CHECK(message(result) == "`tinned` of cable `c` is \"true\"; expected true or false");
    CHECK(help(result) == "write `tinned = true`, without quotes");
    CHECK(result.findings[1].message == "`bundle` of cable `c` is 3.0; expected a whole number");
    CHECK(result.bank.cables.size() == 1); // none of the three is one that it cannot do without
    CHECK(result.left_out == std::vector<std::string>{"C"});
}

TEST_CASE("a value out of its range") {
    auto const result = read_with(
        "[batteries.C]\n"
        "voltage = \"12 V\"\nchemistry = \"agm\"\ncapacity = \"100 Ah\"\n"
        "charge = \"101 %\"\nresistance = \"0 ohm\"\ncells = 0\nmass = \"-3 kg\"\ntemperature = \"-80 degC\"\n");
    CHECK(lines_of(result.findings) == Lines{"13:1-13:17 file/bad-value C.charge",
                                             "14:1-14:21 file/bad-value C.resistance",
                                             "15:1-15:10 file/bad-value C.cells", "16:1-16:15 file/bad-value C.mass",
                                             "17:1-17:25 file/bad-value C.temperature"});
    CHECK(message(result) == "`charge` of battery `C` is \"101 %\"; allowed is from 0 % to 100 %");
    CHECK(result.findings[2].message == "`cells` of battery `C` is 0; allowed is from 1 to 1000");
    CHECK(result.bank.batteries.size() == 3);
}

TEST_CASE("a conductor or a contact may have no resistance, a battery may not") {
    auto const result = read_with("[cables]\nc = { from = \"A-\", to = \"L-\", resistance = \"0 ohm\" "
                                  "}\n[connectors]\nbow = { contact = \"0 ohm\" }\n");
    CHECK(lines_of(result.findings) == Lines{});
}

TEST_CASE("a word that is no choice is answered with the choices") {
    auto const result = read_with("[switches]\nS = { state = \"close\" }\nT = { state = \"mated\" }\n");
    CHECK(lines_of(result.findings) == Lines{"10:7-10:22 file/bad-value S.state", "11:7-11:22 file/bad-value T.state"});
    CHECK(message(result) == "`state` of switch `S` is \"close\"; allowed is `closed` or `open`");
    CHECK(help(result) == "did you mean `closed`?");
    CHECK(result.findings[1].help == "write one of `closed` or `open`");
}

TEST_CASE("a terminal that is none is answered with what the part has, or with the nearest") {
    auto const result = read_with("[cables]\n"
                                  "c = { from = \"A\", to = \"L+\", resistance = \"1 mohm\" }\n"
                                  "d = { from = \"B+\", to = \"J\", resistance = \"1 mohm\" }\n"
                                  "e = { from = \"B+\", to = \"Q+\", resistance = \"1 mohm\" }\n"
                                  "f = { from = \"B.plug+\", to = \"somewhere else\", resistance = \"1 mohm\" }\n");
    CHECK(lines_of(result.findings) ==
          Lines{"10:7-10:17 file/unknown-terminal c.from", "11:20-11:28 file/unknown-terminal d.to",
                "12:20-12:29 file/unknown-terminal e.to", "13:7-13:23 file/unknown-terminal f.from",
                "13:25-13:46 file/unknown-terminal f.to"});
    CHECK(message(result) == "`from` of cable `c` is `A`, which is not a terminal in this bank");
    CHECK(help(result) == "the terminals of A are `A+` and `A-`");
    CHECK(result.findings[1].help == "`J` is a jumper: it has no terminals of its own; name what it is landed on");
    CHECK(result.findings[2].help == "did you mean `A+`?");
    CHECK(result.findings[3].help == "the terminals of B are `B+` and `B-`");
    CHECK(result.findings[4].help ==
          "name a terminal of a part in this file: `A+` of a battery, `CB.line` of a breaker");
    CHECK(result.bank.cables.empty());
    CHECK(result.left_out == std::vector<std::string>{"c", "d", "e", "f"});
}

TEST_CASE("a conductor with both ends on one terminal") {
    auto const result = read_with("[cables]\nc = { from = \"A-\", to = \"A-\", resistance = \"1 mohm\" }\n");
    CHECK(lines_of(result.findings) == Lines{"10:20-10:29 file/bad-value c.to"});
    CHECK(message(result) == "both ends of cable `c` are on `A-`; a conductor joins two terminals");
}

TEST_CASE("the terminals of a part with a mistake still count, so that one mistake is one finding") {
    auto const result = read_with("[breakers]\n"
                                  "CB = { rating = \"60 V\" }\n"
                                  "[cables]\n"
                                  "c = { from = \"CB.line\", to = \"B+\", resistance = \"1 mohm\" }\n"
                                  "d = { from = \"CH.7-\", to = \"B+\", resistance = \"1 mohm\" }\n"
                                  "[chargers]\n"
                                  "CH = { outputs = \"two\" }\n");
    CHECK(lines_of(result.findings) ==
          Lines{"10:8-10:23 file/bad-unit CB.rating", "15:8-15:23 file/bad-value CH.outputs"});
    CHECK(result.left_out == std::vector<std::string>{"CB"});
    CHECK(result.bank.cables.empty()); // what was landed there would hang on nothing
}

TEST_CASE("a charger has the terminals of its outputs and no more") {
    auto const result = read_with("[chargers]\nCH = { outputs = 2 }\none = {}\n[cables]\n"
                                  "c = { from = \"CH.2+\", to = \"B+\", resistance = \"1 mohm\" }\n"
                                  "d = { from = \"CH.3+\", to = \"B+\", resistance = \"1 mohm\" }\n"
                                  "e = { from = \"one.2+\", to = \"B+\", resistance = \"1 mohm\" }\n");
    CHECK(lines_of(result.findings) ==
          Lines{"14:7-14:21 file/unknown-terminal d.from", "15:7-15:22 file/unknown-terminal e.from"});
    CHECK(help(result) == "the terminals of CH are `CH.1+`, `CH.1-`, `CH.2+` and `CH.2-`");
}

TEST_CASE("one name for two parts") {
    auto const two_sections = read_with("[switches]\nA = {}\n");
    CHECK(lines_of(two_sections.findings) == Lines{"10:1-10:7 file/duplicate-id A"});
    CHECK(message(two_sections) ==
          "`A` is the name of a switch here and of a battery on line 3; a name stands for one part");
    CHECK(two_sections.bank.batteries.size() == 2);
    CHECK(two_sections.bank.switches.empty());

    auto const one_section = read_with("L = { power = \"5 W\", lenght = 3 }\nM = { power = 5 }\n");
    CHECK(lines_of(one_section.findings) == Lines{"9:1-9:2 file/duplicate-id L", "10:7-10:16 file/bad-unit M.power"});
    CHECK(message(one_section) == "`L` is the name of a load here and of a load on line 8; a name stands for one part");
    CHECK(one_section.readable);
    CHECK(one_section.bank.loads.size() == 1);
}

TEST_CASE("one key twice in a part cannot be passed over") {
    auto const result = read_with("M = { power = \"5 W\", power = \"6 W\" }\n");
    REQUIRE(result.findings.size() == 1);
    CHECK(result.findings[0].rule == "file/duplicate-id");
    CHECK(result.findings[0].region->begin.line == 9);
    CHECK(message(result) == "`power` is there twice in one table; allowed is once");
    CHECK_FALSE(result.readable);

    auto const lines =
        read_with("[batteries.C]\nvoltage = \"12 V\"\nvoltage = \"6 V\"\nchemistry = \"agm\"\ncapacity = \"1 Ah\"\n");
    REQUIRE(lines_of(lines.findings) == Lines{"11:1-11:8 file/duplicate-id .voltage"});
    CHECK(lines.findings[0].message == "`voltage` is there twice in one table; allowed is once");
    CHECK(lines.bank.batteries.size() == 3);
}

TEST_CASE("a name is made of letters, digits, `_` and inner `-`") {
    auto const result =
        read_with("\"a b\" = { power = \"1 W\" }\n\"x.y\" = { power = \"1 W\" }\nm- = { power = \"1 W\" }\n-m = { "
                  "power = \"1 W\" }\n"
                  "\"\" = { power = \"1 W\" }\n\"é\" = { power = \"1 W\" }\na-_9 = { power = \"1 W\" }\n");
    CHECK(lines_of(result.findings) == Lines{"9:1-9:26 file/bad-value a b", "10:1-10:26 file/bad-value x.y",
                                             "11:1-11:23 file/bad-value m-", "12:1-12:23 file/bad-value -m",
                                             "13:1-13:23 file/bad-value", "14:1-14:24 file/bad-value é"});
    CHECK(result.bank.loads.size() == 2);
    CHECK(result.bank.loads[1].id == "a-_9");
}

TEST_CASE("a control character in a name does not reach the message as it is") {
    auto const result = read_with("\"\\u001B[2J\" = {}\n");
    REQUIRE(result.findings.size() == 1);
    CHECK(message(result).find('\x1b') == std::string::npos);
    CHECK(result.findings[0].parts[0].find('\x1b') == std::string::npos);
}

TEST_CASE("a part, a section or an accepted finding that is no table") {
    auto const result = read_with("M = 5\n[motors]\nT = \"big\"\n");
    CHECK(lines_of(result.findings) == Lines{"9:1-9:6 file/bad-value M", "11:1-11:10 file/bad-value T"});
    CHECK(message(result) == "load `M` is 5; expected a table of keys");
    CHECK(help(result) == "write `M = { ... }`");

    auto const sections =
        read("bankwright = 1\nsystem = \"36 V\"\nmotors = 3\n[[loads]]\npower = \"1 W\"\n[accept]\nrule = \"x\"\n");
    CHECK(lines_of(sections.findings) == Lines{"2:1-2:16 file/bad-value .system", "3:1-3:11 file/bad-value .motors",
                                               "4:1-4:10 file/bad-value .loads", "6:1-6:9 file/bad-value .accept"});
}

TEST_CASE("a load says in exactly one way what it draws") {
    auto const result = read_with("M = { power = \"5 W\", current = \"1 A\" }\n");
    CHECK(lines_of(result.findings) == Lines{"9:1-9:39 file/bad-value M"});
    CHECK(message(result) == "load `M` has `current` and `power` at once; exactly one is allowed");
    CHECK(result.left_out == std::vector<std::string>{"M"});
}

TEST_CASE("keys that contradict each other") {
    auto const result = read_with("M = { power = \"5 W\", min_voltage = \"15 V\", max_voltage = \"11 V\" }\n"
                                  "[batteries.C]\nvoltage = \"12 V\"\nchemistry = \"agm\"\ncapacity = \"90 Ah\"\n"
                                  "cells = 6\ndead_cells = 7\nlow_cutoff = \"15 V\"\nhigh_cutoff = \"14 V\"\n"
                                  "[motors]\nT = { voltage = \"12 V\", current = \"50 A\", winding = \"0.25 ohm\" }\n");
    CHECK(lines_of(result.findings) ==
          Lines{"9:22-9:42 file/bad-value M.min_voltage", "15:1-15:15 file/bad-value C.dead_cells",
                "16:1-16:20 file/bad-value C.low_cutoff", "19:43-19:63 file/bad-value T.winding"});
    CHECK(result.findings[1].message == "battery `C` has 7 dead cells of 6");
    CHECK(
        result.findings[3].message ==
        "motor `T` has a `winding` that drops 12.5 V at its nameplate current; allowed is less than its voltage, 12 V");
    CHECK_FALSE(result.bank.batteries[2].dead_cells.has_value());
    CHECK(result.bank.motors.size() == 1);
}

TEST_CASE("weak cells say how many and how weak, and are no more than there are") {
    auto const result =
        read_with("M = { power = \"5 W\" }\n"
                  "[batteries.C]\ncells = 6\nchemistry = \"agm\"\ncapacity = \"90 Ah\"\nweak_cells = 1\n"
                  "[batteries.D]\ncells = 6\nchemistry = \"agm\"\ncapacity = \"90 Ah\"\nweak_capacity = \"60 %\"\n"
                  "[batteries.E]\ncells = 6\nchemistry = \"agm\"\ncapacity = \"90 Ah\"\nweak_capacity = \"60 %\"\n"
                  "weak_cells = 4\ndead_cells = 3\n"
                  "[batteries.F]\ncells = 6\nchemistry = \"agm\"\ncapacity = \"90 Ah\"\nweak_capacity = \"160 %\"\n"
                  "weak_cells = 1\n");
    std::vector<std::string> said;
    for (auto const& finding : result.findings)
        said.push_back(finding.message);
    CHECK(said == std::vector<std::string>{
                      "battery `C` has `weak_cells` and lacks `weak_capacity`",
                      "battery `D` has `weak_capacity` and lacks `weak_cells`",
                      "battery `E` has 7 weak and dead cells of 6",
                      "`weak_capacity` of battery `F` is \"160 %\"; allowed is more than 0 %, at most 100 %"});
}

TEST_CASE("a syntax error is shown where it stands") {
    auto const unclosed = read("bankwright = 1\n[batteries]\nA = { voltage = \"12 V }\n");
    REQUIRE(unclosed.findings.size() == 1);
    CHECK(unclosed.findings[0].rule == "file/syntax");
    CHECK(unclosed.findings[0].region->begin.line == 3);
    CHECK_FALSE(unclosed.readable);

    auto const no_equals = read("bankwright = 1\n[batteries]\nA { voltage = \"12 V\" }\n");
    REQUIRE(no_equals.findings.size() == 1);
    CHECK(no_equals.findings[0].region->begin == Position{3, 3});
    CHECK(no_equals.findings[0].message == "not TOML: in a key-value pair: expected '=', saw '{'");

    auto const bad_date = read("bankwright = 1\n[batteries]\nA = { made = 2023-02-29 }\n");
    REQUIRE(bad_date.findings.size() == 1);
    CHECK(bad_date.findings[0].rule == "file/syntax");
    CHECK(bad_date.findings[0].region->begin.line == 3);
}

TEST_CASE("what the parser alone would die of is a syntax error") {
    for (std::string const text :
         {"a = [)", "[)", "[é]", "a = é", "a = °", "a = µ", "a = \"x\" Ω", "é = 1", "a.Ω = 1", "[[é]]"}) {
        CAPTURE(text);
        auto const result = read(text);
        REQUIRE(result.findings.size() == 1);
        CHECK(result.findings[0].rule == "file/syntax");
        CHECK(result.findings[0].region->begin.line == 1);
    }
}

TEST_CASE("many mistakes come all at once, in the order of the text") {
    auto const result = read("nam = \"x\"\n"
                             "[loads]\n"
                             "L = { power = 5, foo = 1 }\n"
                             "M = { power = \"5 V\" }\n"
                             "[cables]\n"
                             "c = { from = \"L+\", to = \"M\", size = \"6\", length = \"2 ft\" }\n"
                             "[system]\n"
                             "voltage = 12\n");
    CHECK(lines_of(result.findings) == Lines{"1:1-1:10 file/unknown-key .nam", "1:1-1:1 file/missing-key",
                                             "3:7-3:16 file/bad-unit L.power", "3:18-3:25 file/unknown-key L.foo",
                                             "4:7-4:20 file/bad-unit M.power", "6:20-6:28 file/unknown-terminal c.to",
                                             "6:30-6:40 file/bad-unit c.size",
                                             "8:1-8:13 file/bad-unit [system].voltage"});
}

TEST_SUITE_END();

TEST_CASE("every kind of value says what it expects") {
    auto const battery = [](std::string const& keys) {
        auto const result =
            read("bankwright = 1\n[batteries]\nA = { chemistry = \"agm\", voltage = \"12 V\", " + keys + " }\n");
        REQUIRE(result.findings.size() == 1);
        return result.findings[0].message;
    };
    std::string const sized = "capacity = \"100 Ah\", ";
    CHECK(battery(sized + "mass = 30").find("is 30, without a unit; expected a mass such as \"30 kg\"") !=
          std::string::npos);
    CHECK(battery(sized + "made = \"today\"").find("is \"today\"; expected a date") != std::string::npos);
    CHECK(battery(sized + "cells = 07:32:00").find("is a time; expected a whole number") != std::string::npos);
    CHECK(battery("capacity = 2025-01-02").find("is 2025-01-02; expected a capacity") != std::string::npos);
}
