#include "bankwright/reports/trace_json.hpp"
#include "bankwright/reports/trace_text.hpp"

#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace bankwright;
using Json = nlohmann::ordered_json;

TEST_SUITE_BEGIN("reports/trace");

namespace {

std::vector<std::string> keys(Json const& object) {
    std::vector<std::string> names;
    for (auto const& [name, value] : object.items())
        names.push_back(name);
    return names;
}

Fault moved(std::string on) { return {FaultKind::moved, "J1", "on " + on + " instead of B-", on, "B-"}; }

Traced two_ways() {
    Traced traced;
    traced.file = "x.toml";
    traced.sheet.volts.resize(2);
    Diagnosis turned, elsewhere;
    turned.faults = {{FaultKind::reversed, "B", {}, {}, {}}};
    turned.probability = 0.75;
    turned.misfit = 0.5;
    elsewhere.faults = {moved("C+")};
    elsewhere.alike = {{moved("CB.line")},
                       {{FaultKind::open, "bow", "positive pole", {}, {}, PartKind::connector}},
                       {moved("CB.load")}};
    elsewhere.probability = 0.2;
    elsewhere.misfit = std::nan("");
    traced.result.diagnoses = {turned, elsewhere};
    NextReading next;
    next.red = "A+";
    next.black = "B+";
    next.places = {"battery box"};
    next.moment.loads = LoadsAre::at_rest;
    next.bits = 1.5;
    next.expected = {{turned.faults, 0.0 * si::volt, 0.02 * si::volt},
                     {elsewhere.faults, 12.82 * si::volt, 0.05 * si::volt}};
    traced.result.next = next;
    return traced;
}

} // namespace

TEST_CASE("the trace document has the keys of version 1 in their order") {
    auto const document = Json::parse(trace_json(two_ways()));
    CHECK(document["bankwright"] == "trace");
    CHECK(document["version"] == 1);
    CHECK(keys(document) == std::vector<std::string>{"bankwright", "version", "file", "readings", "explained",
                                                     "current_at_rest", "doubtful", "hypotheses", "next"});
    CHECK(document["readings"] == 2);
    auto const& first = document["hypotheses"][0];
    CHECK(keys(first) == std::vector<std::string>{"faults", "probability", "misfit", "alike"});
    CHECK(keys(first["faults"][0]) == std::vector<std::string>{"kind", "part", "detail"});
    CHECK(first["faults"][0]["kind"] == "reversed");
    CHECK(first["probability"] == 0.75);
    CHECK(document["hypotheses"][1]["alike"].size() == 3);
    CHECK(document["hypotheses"][1]["misfit"].is_null()); // no number is null, never NaN
    auto const& next = document["next"];
    CHECK(keys(next) == std::vector<std::string>{"state", "bits", "again", "expected", "red", "black", "places"});
    CHECK(next["state"] == Json{{"rest", true}});
    CHECK(keys(next["expected"][0]) == std::vector<std::string>{"faults", "reads", "spread"});
    CHECK(next["expected"][1]["reads"] == 12.82);
}

TEST_CASE("the state is in the words of a file of readings, and nothing to read is null") {
    auto traced = two_ways();
    traced.result.next->moment.loads = LoadsAre::constant_current;
    traced.result.next->moment.current = 20.0 * si::ampere;
    CHECK(Json::parse(trace_json(traced))["next"]["state"] == Json{{"rest", false}, {"current", 20.0}});
    traced.result.next->moment.loads = LoadsAre::as_described;
    CHECK(Json::parse(trace_json(traced))["next"]["state"] == Json{{"rest", false}});
    traced.result.next->moment.throttle = Throttle::of(0.5);
    CHECK(Json::parse(trace_json(traced))["next"]["state"] == Json{{"rest", false}, {"throttle", 0.5}});
    traced.result.next.reset();
    CHECK(Json::parse(trace_json(traced))["next"].is_null());
}

TEST_CASE("for people, places of one end are one line, and the cautions stand once") {
    auto const text = trace_text(two_ways());
    CHECK(text.find("x.toml: 2 readings\n\n     75 %  `B` is turned around\n"
                    "     20 %  `J1` is on C+, CB.line or CB.load instead of B-\n"
                    "       or  `bow` makes no contact (positive pole)\n") == 0);
    CHECK(
        text.find(
            "read next, with every load off: red on A+, black on B+ (in place \"battery box\")\n     0.00 V  if `B` is "
            "turned around\n"
            "    12.82 V  if `J1` is on C+ instead of B-\n") != std::string::npos);
    auto const cautions = text.find("before you touch the bank:");
    REQUIRE(cautions != std::string::npos);
    CHECK(text.find("before you touch the bank:", cautions + 1) == std::string::npos);
}

TEST_CASE("a certainty is never claimed, and what is odd is said") {
    auto traced = two_ways();
    traced.result.diagnoses.resize(1);
    traced.result.diagnoses.front().probability = 1.0;
    traced.result.explained = false;
    traced.result.current_at_rest = true;
    auto const text = trace_text(traced);
    CHECK(text.find("over 99 %") != std::string::npos);
    CHECK(text.find("100 %") == std::string::npos);
    CHECK(text.find("no fault that was tried fits these readings") != std::string::npos);
    CHECK(text.find("although every load is off") != std::string::npos);
}
