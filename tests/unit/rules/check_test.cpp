#include "bankwright/rules/check.hpp"
#include "bankwright/rules/inspect.hpp"
#include "support/jon_boat.hpp"

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

// A file's breaker has a rating or is not read; a program may leave it out.
TEST_CASE("a breaker that a program gave no rating is judged by all but its rating") {
    auto bank = support::jon_boat();
    bank.breakers.front().rating = std::nullopt;
    bank.motors.front().current = 400.0 * si::ampere;
    auto const found = check(bank).findings;
    CHECK(std::none_of(found.begin(), found.end(),
                       [](auto const& finding) { return finding.rule.find("protection/rating") == 0; }));
    bank.breakers.front().rating = 60.0 * si::ampere;
    auto const rated = check(bank).findings;
    CHECK(std::any_of(rated.begin(), rated.end(),
                      [](auto const& finding) { return finding.rule == "protection/rating-low"; }));
}

// A check that looks for nothing would find nothing wrong.
TEST_CASE("a word that chooses no rule is refused with the nearest that does") {
    auto const bank = support::jon_boat();
    using Words = std::vector<std::string>;
    CHECK_THROWS_WITH_AS(check(bank, {Words{"wireing"}, {}}),
                         "there is no rule or family `wireing`; did you mean `wiring`?", std::invalid_argument);
    CHECK_THROWS_WITH_AS(check(bank, {{}, Words{"wiring/short-lop"}}),
                         "there is no rule or family `wiring/short-lop`; did you mean `wiring/shorted-loop`?",
                         std::invalid_argument);
    for (auto const& word : Words{"", "wiring/", "/wiring", "Wiring", "wiring,matching", "everything else entirely"}) {
        CAPTURE(word);
        CHECK_THROWS_AS(check(bank, {Words{"wiring", word}, {}}), std::invalid_argument);
        CHECK_THROWS_AS(check(bank, {{}, Words{word}}), std::invalid_argument);
        CHECK_THROWS_AS(inspect("no bank file", {Words{word}, {}}), std::invalid_argument);
    }
    CHECK_NOTHROW(check(bank, {Words{"wiring", "file", "matching/mixed-age"}, Words{"load"}}));
}
