#include "bankwright/config/read.hpp"
#include "bankwright/config/write.hpp"
#include "support/any_bank.hpp"
#include "support/findings_text.hpp"

#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using test::lines_of;

TEST_SUITE_BEGIN("config/write");

TEST_CASE("a bank in its canonical form") {
    auto const bank =
        read("name = \"Sandpiper \\\"II\\\"\" # invented\n"
             "bankwright = 1\n"
             "[[accept]]\nrule = \"load/runtime\"\nreason = \"moored\"\n"
             "[models]\nlamp = { power = \"5 W\" }\n"
             "[loads.B]\nmodel = \"lamp\"\n"
             "[loads.A]\nmodel = \"lamp\"\nmax_voltage = \"15 V\"\n"
             "[batteries]\nZ = { made = 2024-03-01, voltage = \"12 V\", chemistry = \"agm\", capacity = \"100 Ah\", "
             "cells = 6 }\n"
             "[cables]\nc = { length = \"2 m\", size = \"2/0 AWG\", from = \"Z+\", to = \"A+\", tinned = true }\n"
             "[switches]\nS = { state = \"open\" }\nT = {}\n")
            .bank;
    CHECK(write(bank) ==
          "bankwright = 1\n"
          "name = \"Sandpiper \\\"II\\\"\"\n"
          "\n"
          "[system]\n"
          "ambient = \"25 degC\"\n"
          "joint = \"0 ohm\"\n"
          "\n"
          "[batteries]\n"
          "Z = { chemistry = \"agm\", voltage = \"12 V\", cells = 6, capacity = \"100 Ah\", made = 2024-03-01 }\n"
          "\n"
          "[cables]\n"
          "c = { from = \"Z+\", to = \"A+\", size = \"2/0 AWG\", length = \"2 m\", tinned = true }\n"
          "\n"
          "[switches]\n"
          "S = { state = \"open\" }\n"
          "T = {}\n"
          "\n"
          "[loads]\n"
          "B = { power = \"5 W\" }\n"
          "A = { power = \"5 W\", max_voltage = \"15 V\" }\n"
          "\n"
          "[[accept]]\n"
          "rule = \"load/runtime\"\n"
          "reason = \"moored\"\n");
}

TEST_CASE("any bank comes back the same to the last bit, and its text is stable") {
    for (unsigned seed = 0; seed < 300; ++seed) {
        CAPTURE(seed);
        Bank const bank = test::AnyBank(seed).make();
        auto const text = write(bank);
        CAPTURE(text);
        auto const again = read(text);
        std::vector<std::string> errors; // an accepted finding may have an empty reason: that is a warning
        for (auto const& finding : again.findings)
            if (finding.level == Level::error) errors.push_back(test::line_of(finding) + " " + finding.message);
        REQUIRE(errors == std::vector<std::string>{});
        REQUIRE(again.bank == bank);
        REQUIRE(write(again.bank) == text);
    }
}

TEST_CASE("with models and comments it is the same bank") {
    WriteNotes notes;
    notes.head = {"a bank"};
    notes.sections["batteries"] = {"one", "two"};
    for (unsigned seed = 0; seed < 300; ++seed) {
        CAPTURE(seed);
        Bank const bank = test::AnyBank(seed).make();
        if (!bank.batteries.empty()) notes.parts[bank.batteries.front().id] = "the first";
        auto const text = write(bank, notes);
        CAPTURE(text);
        auto const again = read(text).bank;
        CHECK(again == bank);
    }
}

TEST_CASE("what parts have in common stands once, as a model") {
    auto const bank =
        read("[batteries]\nA = { voltage = \"12 V\", chemistry = \"agm\", capacity = \"100 Ah\", charge = \"90 %\" }\n"
             "B = { voltage = \"12 V\", chemistry = \"agm\", capacity = \"100 Ah\" }\n"
             "[cables]\nc = { from = \"A+\", to = \"B-\", size = \"6 AWG\", length = \"1 m\" }\n"
             "d = { from = \"B+\", to = \"A-\", size = \"6 AWG\", length = \"2 m\" }\n")
            .bank;
    WriteNotes notes;
    notes.head = {"Invented."};
    notes.sections["cables"] = {"all alike"};
    notes.parts["c"] = "from box to box";
    CHECK(write(bank, notes) ==
          "# Invented.\n"
          "bankwright = 1\n"
          "\n[system]\nambient = \"25 degC\"\njoint = \"0 ohm\"\n"
          "\n[models]\n"
          "battery = { chemistry = \"agm\", voltage = \"12 V\", capacity = \"100 Ah\" }\n"
          "no6 = { size = \"6 AWG\" }\n"
          "\n[batteries]\n"
          "A = { model = \"battery\", charge = \"90 %\" }\n"
          "B = { model = \"battery\" }\n"
          "\n[cables]\n# all alike\n"
          "c = { model = \"no6\", from = \"A+\", to = \"B-\", length = \"1 m\" } # from box to box\n"
          "d = { model = \"no6\", from = \"B+\", to = \"A-\", length = \"2 m\" }\n");
}

TEST_CASE("what no file can hold is refused") {
    Bank bank;
    bank.loads.emplace_back();
    bank.loads[0].id = "L";
    bank.loads[0].power = std::numeric_limits<double>::infinity() * si::watt;
    CHECK_THROWS_AS(write(bank), std::invalid_argument);
    bank.loads[0].power = std::numeric_limits<double>::quiet_NaN() * si::watt;
    CHECK_THROWS_AS(write(bank), std::invalid_argument);
}

TEST_CASE("a name that is none still makes good TOML") {
    Bank bank;
    bank.loads.emplace_back();
    bank.loads[0].id = "a b\"";
    bank.loads[0].power = 1.0 * si::watt;
    auto const again = read(write(bank));
    CHECK(lines_of(again.findings) == std::vector<std::string>{"8:1-8:28 file/bad-value a b\""});
}

TEST_SUITE_END();
