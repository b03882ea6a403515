#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/solution_json.hpp"
#include "support/backwards.hpp"

#include <limits>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace bankwright;
using Json = nlohmann::ordered_json;

namespace {

std::vector<std::string> keys(Json const& object) {
    std::vector<std::string> names;
    for (auto const& [name, value] : object.items())
        names.push_back(name);
    return names;
}

Solved one_battery() {
    Solved solved;
    solved.file = "x.toml";
    solved.arrangement = "1S1P";
    solved.point.status = solver::Status::solved;
    solved.point.reference = "A-";
    solved.point.terminals = {{"A+", 0.1 * si::volt + 12.6 * si::volt}, {"A-", 0.0 * si::volt}, {"B+", std::nullopt}};
    solved.point.parts = {{"A", PartKind::battery, 49.8 * si::ampere, 12.7 * si::volt, 632.46 * si::watt},
                          {"CB", PartKind::breaker, 0.0 * si::ampere,
                           std::numeric_limits<double>::quiet_NaN() * si::volt, 0.0 * si::watt}};
    solved.point.condition = std::numeric_limits<double>::infinity();
    return solved;
}

} // namespace

TEST_CASE("the findings document has the keys of version 1 in their order") {
    auto const document = Json::parse(findings_json({support::backwards(), support::nothing_wrong()}));
    CHECK(document["bankwright"] == "findings");
    CHECK(document["version"] == 1);
    REQUIRE(document["files"].size() == 2);
    auto const& file = document["files"][0];
    CHECK(keys(file) == std::vector<std::string>{"file", "arrangement", "counts", "left_out", "findings"});
    CHECK(file["arrangement"].is_null());
    CHECK(file["counts"] == Json{{"error", 1}, {"warning", 1}, {"note", 1}});
    CHECK(document["files"][1]["arrangement"] == "3S1P");
    auto first = keys(file["findings"][0]);
    first.resize(13);
    CHECK(first == std::vector<std::string>{"rule", "level", "message", "help", "parts", "line", "column", "end_line",
                                            "end_column", "found", "allowed", "unit", "accepted"});
}

TEST_CASE("a finding's values are in the document as they are") {
    auto const findings = Json::parse(findings_json({support::backwards()}))["files"][0]["findings"];
    CHECK(findings[0]["rule"] == "wiring/reversed-battery");
    CHECK(findings[0]["level"] == "error");
    CHECK(findings[0]["parts"] == Json{"aft", "fore"});
    CHECK(findings[0]["line"] == 9);
    CHECK(findings[0]["end_column"] == 67);
    CHECK(findings[0]["found"] == 0.0);
    CHECK(findings[0]["allowed"] == 24.0);
    CHECK(findings[0]["expected"] == 24.0); // what wiring that is right would give is no limit
    CHECK_FALSE(findings[1].contains("expected"));
    CHECK(findings[0]["consequences"].size() == 2);
    CHECK(findings[1]["unit"] == "%");
    CHECK(findings[2]["line"].is_null());
    CHECK(findings[2]["found"].is_null());
    CHECK(findings[2]["unit"].is_null());
    CHECK(findings[2]["parts"] == Json::array());
    CHECK(findings[3]["accepted"] == true);
    CHECK(findings[3]["accepted_because"] == "the cable is in conduit, inside the battery box");
}

TEST_CASE("what is no number is null and what is no UTF-8 is replaced") {
    Verdict verdict;
    verdict.file = "caf\xe9.toml";
    verdict.findings.push_back({.message = "\xff",
                                .found = std::numeric_limits<double>::quiet_NaN(),
                                .allowed = std::numeric_limits<double>::infinity(),
                                .unit = "A"});
    auto const file = Json::parse(findings_json({verdict}))["files"][0];
    CHECK(file["file"] == "caf\uFFFD.toml");
    CHECK(file["findings"][0]["message"] == "\uFFFD");
    CHECK(file["findings"][0]["found"].is_null());
    CHECK(file["findings"][0]["allowed"].is_null());
}

TEST_CASE("the cautions are in the document where the text would say them") {
    CHECK(Json::parse(findings_json({support::backwards()})).contains("cautions"));
    CHECK_FALSE(Json::parse(findings_json({support::nothing_wrong()})).contains("cautions"));
}

TEST_CASE("the solution document has the keys of version 1 in their order") {
    auto const document = Json::parse(solution_json(one_battery()));
    auto first = keys(document);
    first.resize(9);
    CHECK(first == std::vector<std::string>{"bankwright", "version", "file", "status", "arrangement", "assumed",
                                            "reference", "terminals", "parts"});
    CHECK(document["bankwright"] == "solution");
    CHECK(document["status"] == "solved");
    CHECK(document["reference"] == "A-");
    CHECK(keys(document["parts"]["A"]) == std::vector<std::string>{"kind", "current", "voltage", "power"});
    CHECK(document["parts"]["A"]["kind"] == "battery");
}

TEST_CASE("numbers keep their last bit, and a floating terminal is null") {
    auto const document = Json::parse(solution_json(one_battery()));
    CHECK(document["terminals"]["A+"].get<double>() == 0.1 + 12.6);
    CHECK(document["terminals"]["A-"].get<double>() == 0.0);
    CHECK(document["terminals"]["B+"].is_null());
    CHECK(document["parts"]["CB"]["voltage"].is_null());
    CHECK(document["condition"].is_null());
}

TEST_CASE("without an operating point the status says why, and the share that could be had") {
    Solved solved;
    solved.file = "x.toml";
    solved.point.status = solver::Status::no_operating_point;
    solved.point.reachable_share = 0.4;
    solved.findings.push_back({.rule = "solve/no-solution", .message = "no operating point"});
    auto const document = Json::parse(solution_json(solved));
    CHECK(document["status"] == "no-operating-point");
    CHECK(document["arrangement"].is_null());
    CHECK(document["parts"] == Json::object());
    CHECK(document["reachable_share"] == 0.4);
    CHECK(document["residual"].is_null());
    CHECK(document["findings"][0]["rule"] == "solve/no-solution");
}
