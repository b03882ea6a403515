#include "bankwright/findings/order.hpp"
#include "bankwright/findings/rule_id.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("the worst comes first, then the file's order, and what is accepted last") {
    Finding note{.rule = "note", .level = Level::note, .region = Region{{1, 1}, {1, 2}}};
    Finding late{.rule = "late", .level = Level::error, .region = Region{{9, 1}, {9, 2}}};
    Finding early{.rule = "early", .level = Level::error, .region = Region{{2, 8}, {2, 9}}};
    Finding earlier{.rule = "earlier", .level = Level::error, .region = Region{{2, 7}, {2, 9}}};
    Finding nowhere{.rule = "nowhere", .level = Level::error};
    Finding accepted{.rule = "accepted", .level = Level::error, .accepted = true};
    Findings findings{accepted, note, late, early, earlier, nowhere};
    order(findings);
    std::vector<std::string> seen;
    for (auto const& finding : findings)
        seen.push_back(finding.rule);
    CHECK(seen == std::vector<std::string>{"nowhere", "earlier", "early", "late", "note", "accepted"});
}

TEST_CASE("findings that are alike in level and place keep their order") {
    Findings findings{Finding{.rule = "b"}, Finding{.rule = "a"}};
    order(findings);
    CHECK(findings[0].rule == "b");
}

TEST_CASE("a rule's family is what stands before the slash") {
    CHECK(family("wiring/shorted-loop") == "wiring");
    CHECK(family("wiring") == "wiring");
    CHECK(family("") == "");
}
