#include "bankwright/config/read.hpp"
#include "support/findings_text.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using test::lines_of;
using Lines = std::vector<std::string>;

TEST_SUITE_BEGIN("config/models");

TEST_CASE("a model lends its keys, and a part's own keys win") {
    auto const result =
        read("bankwright = 1\n"
             "[models]\n"
             "deck = { chemistry = \"agm\", voltage = \"12 V\", capacity = \"100 Ah\", charge = \"90 %\" }\n"
             "[batteries]\n"
             "A = { model = \"deck\" }\n"
             "B = { model = \"deck\", charge = \"50 %\" }\n");
    CHECK(lines_of(result.findings) == Lines{});
    REQUIRE(result.bank.batteries.size() == 2);
    CHECK(result.bank.batteries[0].charge == StateOfCharge::percent(90.0));
    CHECK(result.bank.batteries[1].charge == StateOfCharge::percent(50.0));
    CHECK(result.bank.batteries[1].voltage->value() == 12.0);
    // What comes from a model points at the part that uses it; the model has a place of its own.
    CHECK(test::place(*result.map.find("A", "voltage")) == "5:1-5:23");
    CHECK(test::place(*result.map.find("[models] deck", "voltage")) == "3:29-3:45");
}

TEST_CASE("a model may stand after the parts that use it, and as a sub-table") {
    auto const result = read("bankwright = 1\n[loads]\nL = { model = \"lamp\" }\n[models.lamp]\npower = \"5 W\"\n");
    CHECK(lines_of(result.findings) == Lines{});
    REQUIRE(result.bank.loads.size() == 1);
    CHECK(result.bank.loads[0].power->value() == 5.0);
}

TEST_CASE("an unknown model is one finding, whatever the part then lacks") {
    auto const result = read("bankwright = 1\n[models]\nlamp = { power = \"5 W\" }\n[loads]\nL = { model = \"lampp\" "
                             "}\nM = { model = 3 }\n");
    CHECK(lines_of(result.findings) == Lines{"5:7-5:22 file/bad-value L.model", "6:7-6:16 file/bad-value M.model"});
    CHECK(result.findings[0].message == "`model` of load `L` is \"lampp\", which is not a model");
    CHECK(result.findings[0].help == "did you mean `lamp`?");
    CHECK(result.left_out == std::vector<std::string>{"L", "M"});
}

TEST_CASE("a mistake in a model is found once, in the model") {
    auto const result = read("bankwright = 1\n"
                             "[models]\n"
                             "deck = { chemistry = \"agmm\", voltage = \"12 V\", capacity = \"100 Ah\", wieght = \"3 "
                             "kg\", model = \"deck\" }\n"
                             "[batteries]\n"
                             "A = { model = \"deck\", chemistry = \"gel\" }\n"
                             "B = { model = \"deck\" }\n");
    CHECK(lines_of(result.findings) == Lines{"3:10-3:28 file/bad-value [models] deck.chemistry",
                                             "3:69-3:84 file/unknown-key [models] deck.wieght",
                                             "3:86-3:100 file/unknown-key [models] deck.model"});
    CHECK(result.findings[2].message == "model `deck` is built on another model; a model holds keys of its own only");
    REQUIRE(result.bank.batteries.size() == 1); // A has a chemistry of its own; B cannot do without one
    CHECK(result.bank.batteries[0].id == "A");
    CHECK(result.left_out == std::vector<std::string>{"B"});
}

TEST_CASE("a model of another kind of part is refused where it is used") {
    auto const result =
        read("bankwright = 1\n[models]\ndeck = { chemistry = \"agm\" }\nzero = { resistance = \"0 ohm\" "
             "}\n[busbars]\nA = { model = \"deck\" }\n"
             "[batteries]\nB = { model = \"zero\", voltage = \"12 V\", chemistry = \"agm\", capacity = \"90 Ah\" }\n");
    CHECK(lines_of(result.findings) ==
          Lines{"6:7-6:21 file/bad-value A.model", "8:7-8:21 file/bad-value B.resistance"});
    CHECK(result.findings[0].message ==
          "`model` of busbar `A` is \"deck\", which holds `chemistry`: busbar `A` has no such key");
}

TEST_CASE("a model that is no table, and a model that nobody uses") {
    auto const result =
        read("bankwright = 1\n[models]\nlamp = 5\nspare = { voltage = \"12 V\" }\nbad = { voltage = \"12 A\" }\n");
    CHECK(lines_of(result.findings) ==
          Lines{"3:1-3:9 file/bad-value [models] lamp", "5:9-5:25 file/bad-unit [models] bad.voltage"});
}

TEST_SUITE_END();
