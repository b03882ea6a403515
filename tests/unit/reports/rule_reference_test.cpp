#include "bankwright/reports/rule_reference.hpp"
#include "support/backwards.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace bankwright;

TEST_CASE("a list of rules has a line each, lined up") {
    CHECK(rules_text(support::some_rules()) ==
          "matching/mixed-capacity  warning  capacities in series that differ\n"
          "wiring/reversed-battery  error    a battery that opposes the others of its string\n");
}

TEST_CASE("one rule is explained with its source") {
    auto const text = rule_text(support::reversed_battery);
    for (auto const* part : {"wiring/reversed-battery (error, since 0.1)", "a battery that opposes",
                             "charged backwards", "exchange its leads", "common practice, no single source"})
        CHECK_MESSAGE(text.find(part) != std::string::npos, part);
}

TEST_CASE("the rules document says the same to programs") {
    auto const document = nlohmann::json::parse(rules_json(support::some_rules()));
    CHECK(document["bankwright"] == "rules");
    CHECK(document["version"] == 1);
    REQUIRE(document["rules"].size() == 2);
    CHECK(document["rules"][1]["id"] == "wiring/reversed-battery");
    CHECK(document["rules"][1]["source"] == "common practice, no single source");
}
