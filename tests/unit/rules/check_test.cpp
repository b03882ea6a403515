#include "bankwright/rules/check.hpp"
#include "support/jon_boat.hpp"

#include <algorithm>
#include <optional>

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
