#include "bankwright/config/read_readings.hpp"
#include "support/findings_text.hpp"
#include "support/jon_boat.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using test::lines_of;
using Lines = std::vector<std::string>;

TEST_SUITE_BEGIN("config/read_readings");

namespace {

ReadingsResult read_sheet(std::string const& text) { return read_readings(text, support::jon_boat()); }

} // namespace

TEST_CASE("meter, clamp, state and readings are read as they are written") {
    auto const result = read_sheet("bankwright-readings = 1\nname = \"after the winter\"\n"
                                   "[meter]\naccuracy = \"0.8 % + 3 digits\"\nresolution = \"100 mV\"\n"
                                   "[clamp]\naccuracy = \"3 % + 4 counts\"\nresolution = \"10 mA\"\n"
                                   "[[volts]]\nred = \"C+\"\nblack = \"A-\"\nreads = \"-12.6 V\"\n"
                                   "[[amps]]\npart = \"J1\"\nreads = \"23 A\"\nthrottle = \"60 %\"\n");
    CHECK(lines_of(result.findings) == Lines{});
    CHECK(result.readable);
    auto const& sheet = result.sheet;
    CHECK(sheet.meter.of_reading == doctest::Approx(0.008));
    CHECK(sheet.meter.counts == 3);
    CHECK(sheet.meter.digit.value() == doctest::Approx(0.1));
    CHECK(sheet.clamp.of_reading == doctest::Approx(0.03));
    CHECK(sheet.clamp.counts == 4);
    CHECK(sheet.clamp.digit.value() == doctest::Approx(0.01));
    REQUIRE(sheet.volts.size() == 1);
    CHECK(sheet.volts[0].red == "C+");
    CHECK(sheet.volts[0].black == "A-");
    CHECK(sheet.volts[0].reads.value() == doctest::Approx(-12.6));
    CHECK_FALSE(sheet.volts[0].state.throttle);
    REQUIRE(sheet.amps.size() == 1);
    CHECK(sheet.amps[0].part == "J1");
    CHECK(sheet.amps[0].reads.value() == doctest::Approx(23.0));
    CHECK(sheet.amps[0].state.throttle->value() == doctest::Approx(0.6));
}

TEST_CASE("an empty file is a sheet without readings and the usual meter") {
    auto const result = read_sheet("");
    CHECK(result.findings.empty());
    CHECK(result.sheet.volts.empty());
    CHECK(result.sheet.meter.of_reading == doctest::Approx(0.005));
    CHECK(result.sheet.meter.counts == 2);
    CHECK(result.sheet.meter.digit.value() == doctest::Approx(0.01));
}

TEST_CASE("the state of the file holds unless a reading has its own") {
    auto const result = read_sheet("[state]\ncurrent = \"20 A\"\n"
                                   "[[volts]]\nred = \"C+\"\nblack = \"A-\"\nreads = \"36 V\"\n"
                                   "[[volts]]\nred = \"C+\"\nblack = \"A-\"\nreads = \"38 V\"\nrest = true\n");
    CHECK(lines_of(result.findings) == Lines{});
    REQUIRE(result.sheet.volts.size() == 2);
    CHECK(result.sheet.volts[0].state.current->value() == doctest::Approx(20.0));
    CHECK_FALSE(result.sheet.volts[1].state.current);
    CHECK(*result.sheet.volts[1].state.rest);
}

TEST_CASE("a bad accuracy is a finding at the key, with one that would do") {
    auto const result = read_sheet("[meter]\naccuracy = \"quite good\"\n[clamp]\naccuracy = \"2 % + 900 digits\"\n");
    CHECK(lines_of(result.findings) ==
          Lines{"2:1-2:24 file/bad-value [meter].accuracy", "4:1-4:30 file/bad-value [clamp].accuracy"});
    CHECK(result.findings[0].message.find("quite good") != std::string::npos);
    CHECK(result.findings[0].message.find("0.5 % + 2 digits") != std::string::npos);
}

TEST_CASE("an unknown terminal and an unknown part are told with the nearest name") {
    auto const result = read_sheet("[[volts]]\nred = \"CB.lin\"\nblack = \"A-\"\nreads = \"12 V\"\n"
                                   "[[amps]]\npart = \"retrn\"\nreads = \"2 A\"\n");
    CHECK(lines_of(result.findings) ==
          Lines{"2:1-2:15 file/unknown-terminal [[volts]] 1.red", "6:1-6:15 file/bad-value [[amps]] 1.part"});
    CHECK(result.findings[0].help == "did you mean `CB.line`?");
    CHECK(result.findings[1].help == "did you mean `return`?");
    CHECK(result.sheet.volts.empty());
    CHECK(result.sheet.amps.empty());
}

TEST_CASE("both leads on one terminal measure nothing") {
    auto const result = read_sheet("[[volts]]\nred = \"A-\"\nblack = \"A-\"\nreads = \"0 V\"\n");
    CHECK(lines_of(result.findings) == Lines{"3:1-3:13 file/bad-value [[volts]] 1.black"});
}

TEST_CASE("more than one state at once is a finding") {
    auto const result = read_sheet("[state]\nrest = true\nthrottle = \"50 %\"\n"
                                   "[[volts]]\nred = \"C+\"\nblack = \"A-\"\nreads = \"36 V\"\n"
                                   "current = \"2 A\"\nthrottle = \"50 %\"\n");
    CHECK(lines_of(result.findings) == Lines{"1:1-1:8 file/bad-value [state]", "4:1-4:10 file/bad-value [[volts]] 1"});
    CHECK(read_sheet("[state]\nrest = false\nthrottle = \"50 %\"\n").findings.empty());
}

TEST_CASE("all that is wrong is found at once, in the order of the text") {
    auto const result = read_sheet("meters = 1\n[meter]\nresolution = \"10\"\ncolor = \"red\"\n"
                                   "[[volts]]\nred = \"C+\"\nreads = \"12.6 A\"\n"
                                   "[[volts]]\nred = 5\nblack = \"A-\"\nreads = \"5000 V\"\n"
                                   "[[amps]]\nreads = \"1 A\"\n");
    CHECK(lines_of(result.findings) ==
          Lines{"1:1-1:11 file/unknown-key .meters", "3:1-3:18 file/bad-unit [meter].resolution",
                "4:1-4:14 file/unknown-key [meter].color", "5:1-5:10 file/missing-key [[volts]] 1",
                "7:1-7:17 file/bad-unit [[volts]] 1.reads", "9:1-9:8 file/bad-value [[volts]] 2.red",
                "11:1-11:17 file/bad-value [[volts]] 2.reads", "12:1-12:9 file/missing-key [[amps]] 1"});
    CHECK(result.findings[0].help == "did you mean `meter`?");
}

TEST_CASE("sections of the wrong shape say how they are written") {
    auto const result = read_sheet("meter = 5\nvolts = { red = \"C+\" }\namps = [3]\n");
    REQUIRE(result.findings.size() == 3);
    CHECK(result.findings[0].help == "write [meter]");
    CHECK(result.findings[1].help == "write [[volts]], in double brackets, above each");
    CHECK(result.findings[2].help == "write [[amps]] above each");
}

TEST_CASE("a bank file in its place, and another version") {
    auto const bank = read_sheet("bankwright = 1\n[batteries]\nA = {}\n");
    CHECK_FALSE(bank.readable);
    CHECK(lines_of(bank.findings) == Lines{"1:1-1:15 file/bad-value .bankwright"});
    CHECK(lines_of(read_sheet("bankwright-readings = 2\n").findings) ==
          Lines{"1:1-1:24 file/bad-value .bankwright-readings"});
}

TEST_CASE("a busbar has no current of its own") {
    auto bank = support::jon_boat();
    bank.busbars.push_back({"bar", {}, {}});
    auto const result = read_readings("[[amps]]\npart = \"bar\"\nreads = \"1 A\"\n", bank);
    CHECK(lines_of(result.findings) == Lines{"2:1-2:13 file/bad-value [[amps]] 1.part"});
}

TEST_CASE("hostile files are findings") {
    std::string const huge(100'000, 'x');
    for (auto const& text :
         {"[[volts]]\nred = \"" + huge + "\"\nblack = \"" + huge + "\"\nreads = \"" + huge + "\"\n", huge + " = 1\n",
          "[[amps]]\npart = \"" + huge + "\"\nreads = \"1 A\"\n", "[meter]\naccuracy = \"" + huge + "\"\n",
          "a = " + std::string(100'000, '['), std::string("[[volts]]\nred = \"A\0\"", 19), std::string("\0", 1),
          std::string("\xFF\xFE["), std::string("[[volts]]\nred = \"\\u0000\"\nblack = \"A-\"\nreads = \"1 V\"\n"),
          std::string("[[volts]"), std::string("[volts.volts]\n[[amps.x]]\n")}) {
        auto const result = read_sheet(text);
        CHECK_FALSE(result.findings.empty());
        CHECK(result.sheet.volts.empty());
        for (auto const& finding : result.findings)
            CHECK(finding.message.size() + finding.help.size() < 2000);
    }
}

TEST_CASE("a file with more readings than a visit gives is refused") {
    std::string text;
    for (int i = 0; i < 60; ++i)
        text += "[[volts]]\nred = \"C+\"\nblack = \"A-\"\nreads = \"1 V\"\n";
    auto const result = read_sheet(text);
    CHECK_FALSE(result.readable);
    REQUIRE(result.findings.size() == 1);
    CHECK(result.findings[0].rule == "file/too-large");
    CHECK(result.findings[0].message == "60 readings; allowed are 50");
}

TEST_CASE("a key that stands twice is told") {
    auto const result = read_sheet("[meter]\nresolution = \"1 mV\"\nresolution = \"2 mV\"\n");
    CHECK(lines_of(result.findings) == Lines{"3:1-3:11 file/duplicate-id .resolution"});
}
