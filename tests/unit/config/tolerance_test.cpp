#include "bankwright/config/read.hpp"

#include <algorithm>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

std::string const top = "bankwright = 1\n[batteries]\nA = { chemistry = \"agm\", voltage = \"12 V\", ";

Bank read_battery(std::string const& keys) {
    auto const read = bankwright::read(top + keys + " }\n");
    REQUIRE(read.findings.empty());
    return read.bank;
}

std::string trouble(std::string const& keys) {
    std::string all;
    for (auto const& finding : bankwright::read(top + keys + " }\n").findings)
        all += finding.message + '\n' + finding.help + '\n';
    return all;
}

} // namespace

TEST_CASE("a value may be followed by its tolerance, in percent or in its own unit") {
    for (auto const* text :
         {"4 mohm \u00B1 10 %", "4 mohm +/- 10 %", "4mohm+-10%", "4 mohm \u00B1 0.4 mohm", "4 mohm +/- 400 uohm"}) {
        CAPTURE(text);
        auto const bank = read_battery("capacity = \"100 Ah\", resistance = \"" + std::string(text) + "\"");
        CHECK(bank.batteries.front().resistance->value() == doctest::Approx(4e-3));
        REQUIRE(bank.tolerances.size() == 1);
        CHECK(bank.tolerances[0].part == "A");
        CHECK(bank.tolerances[0].key == "resistance");
        CHECK(bank.tolerances[0].spread.value() == doctest::Approx(0.1));
    }
}

TEST_CASE("of a state of charge the tolerance is in points") {
    auto const bank = read_battery("capacity = \"100 Ah +/- 7 %\", charge = \"90 % +/- 5 %\"");
    REQUIRE(bank.tolerances.size() == 2);
    CHECK(bank.tolerances[0].key == "capacity");
    CHECK(bank.tolerances[1].spread.value() == doctest::Approx(0.05));
}

TEST_CASE("a model's tolerance is that of every part made of it") {
    auto const read = bankwright::read("bankwright = 1\n[system]\njoint = \"0.1 mohm +/- 50 %\"\n[models]\n"
                                       "m = { chemistry = \"agm\", voltage = \"12 V\", capacity = \"80 Ah +/- 5 %\" }\n"
                                       "[batteries]\nA = { model = \"m\" }\nB = { model = \"m\" }\n");
    CHECK(read.findings.empty());
    REQUIRE(read.bank.tolerances.size() == 3);
    CHECK(read.bank.tolerances[0].part.empty());
    CHECK(read.bank.tolerances[1].part == "A");
    CHECK(read.bank.tolerances[2].part == "B");
}

TEST_CASE("a tolerance that is none, or where none is known, is a finding") {
    CHECK(trouble("capacity = \"100 Ah +/- 95 %\"").find("at most 90 %") != std::string::npos);
    CHECK(trouble("capacity = \"100 Ah +/-\"").find("tolerance") != std::string::npos);
    CHECK(trouble("capacity = \"100 Ah +/- 5 V\"").find("tolerance") != std::string::npos);
    CHECK(trouble("capacity = \"100 Ah +/- -5 %\"").find("tolerance") != std::string::npos);
    CHECK(trouble("capacity = \"100 Ah\", reserve = \"180 min +/- 5 %\"").find("a tolerance is not known of it") !=
          std::string::npos);
}
