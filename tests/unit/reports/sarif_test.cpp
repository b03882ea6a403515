#include "bankwright/reports/sarif.hpp"
#include "support/backwards.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace bankwright;
using Json = nlohmann::ordered_json;

namespace {

Json run_of(Verdicts const& verdicts) {
    return Json::parse(findings_sarif(verdicts, support::some_rules()))["runs"][0];
}

} // namespace

TEST_CASE("the log says its version and describes every rule") {
    auto const log = Json::parse(findings_sarif({support::backwards()}, support::some_rules()));
    CHECK(log["version"] == "2.1.0");
    auto const& rules = log["runs"][0]["tool"]["driver"]["rules"];
    REQUIRE(rules.size() == 2);
    CHECK(rules[1]["id"] == "wiring/reversed-battery");
    CHECK(rules[1]["shortDescription"]["text"] == "a battery that opposes the others of its string");
    CHECK(rules[1]["fullDescription"]["text"] == "it is charged backwards and destroyed");
    CHECK(rules[1]["help"]["text"] == "exchange its leads");
    CHECK(rules[0]["defaultConfiguration"]["level"] == "warning");
}

TEST_CASE("a result points at its rule, its region and its parts") {
    auto const result = run_of({support::backwards()})["results"][0];
    CHECK(result["ruleId"] == "wiring/reversed-battery");
    CHECK(result["ruleIndex"] == 1);
    CHECK(result["level"] == "error");
    auto const& location = result["locations"][0];
    CHECK(location["physicalLocation"]["artifactLocation"]["uri"] == "backwards.toml");
    CHECK(location["physicalLocation"]["region"] ==
          Json{{"startLine", 9}, {"startColumn", 1}, {"endLine", 9}, {"endColumn", 67}});
    CHECK(location["logicalLocations"][0]["name"] == "aft");
    CHECK(result["properties"]["allowed"] == 24.0);
    CHECK(result["properties"]["unit"] == "V");
    CHECK(result["suppressions"] == Json::array());
}

TEST_CASE("a rule that the list does not know has no index, a finding without a place no region") {
    auto const result = run_of({support::backwards()})["results"][2];
    CHECK(result["ruleId"] == "conductor/unequal-links");
    CHECK_FALSE(result.contains("ruleIndex"));
    CHECK_FALSE(result["locations"][0]["physicalLocation"].contains("region"));
    CHECK_FALSE(result["locations"][0].contains("logicalLocations"));
}

TEST_CASE("an accepted finding is suppressed in the source, with its reason") {
    auto const result = run_of({support::backwards()})["results"][3];
    REQUIRE(result["suppressions"].size() == 1);
    CHECK(result["suppressions"][0]["kind"] == "inSource");
    CHECK(result["suppressions"][0]["justification"] == "the cable is in conduit, inside the battery box");
}

TEST_CASE("a file's name becomes a URI") {
    auto const uri = [](std::string const& file) {
        return run_of({Verdict{file, "", std::nullopt, {}}})["artifacts"][0]["location"]["uri"].get<std::string>();
    };
    CHECK(uri("boats/bow 36 V.toml") == "boats/bow%2036%20V.toml");
    CHECK(uri("/boats/a.toml") == "file:///boats/a.toml");
    CHECK(uri("caf\u00e9#1.toml") == "caf%C3%A9%231.toml");
}

TEST_CASE("a log of a bank in which nothing is wrong has an empty list of results") {
    CHECK(run_of({support::nothing_wrong()})["results"] == Json::array());
}
