#include "bankwright/rules/settings.hpp"
#include "support/findings_text.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using test::lines_of;
using Lines = std::vector<std::string>;

TEST_SUITE_BEGIN("rules/settings");

TEST_CASE("settings say what the command line can say") {
    auto const read = read_settings(
        "fail-on = \"warning\"\nonly = [\"wiring\", \"matching/mixed-age\"]\nskip = [\"load/runtime\"]\n");
    CHECK(lines_of(read.findings) == Lines{});
    CHECK(read.settings.fail_on == Level::warning);
    CHECK(read.settings.only == Lines{"wiring", "matching/mixed-age"});
    CHECK(read.settings.skip == Lines{"load/runtime"});
}

TEST_CASE("what is not said is left open") {
    auto const read = read_settings("# nothing yet\n");
    CHECK(read.readable);
    CHECK(read.findings.empty());
    CHECK_FALSE(read.settings.fail_on);
    CHECK_FALSE(read.settings.only);
    CHECK_FALSE(read.settings.skip);
}

TEST_CASE("each level is read as itself") {
    CHECK(read_settings("fail-on = \"error\"").settings.fail_on == Level::error);
    CHECK(read_settings("fail-on = \"note\"").settings.fail_on == Level::note);
}

TEST_CASE("every mistake is found at its place, and the rest is kept") {
    auto const read =
        read_settings("skip = [\"wirin\", \"load\"]\nonly = [\"load\"]\nfail-on = \"all\"\nformat = \"json\"\n");
    CHECK(lines_of(read.findings) == Lines{"1:9-1:16 file/bad-value .skip", "3:1-3:16 file/bad-value .fail-on",
                                           "4:1-4:16 file/unknown-key .format"});
    CHECK(read.findings[0].help == "did you mean `wiring`?");
    CHECK_FALSE(read.settings.skip);
    CHECK_FALSE(read.settings.fail_on);
    CHECK(read.settings.only == Lines{"load"});
    CHECK(read.readable);
}

TEST_CASE("what is no TOML cannot be read") {
    CHECK_FALSE(read_settings("fail-on = ").readable);
    CHECK_FALSE(read_settings(std::string("a\0b", 3)).readable);
}

TEST_SUITE_END();
