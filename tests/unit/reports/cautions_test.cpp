// Which cautions stand on which sheet, each once?
#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/expectation.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("reports/cautions");

namespace {

Finding error(std::string rule, std::optional<double> allowed = {}) {
    Finding finding;
    finding.rule = std::move(rule);
    finding.allowed = allowed;
    return finding;
}

bool each_is_said_once(std::vector<std::string_view> const& cautions) {
    return std::set<std::string_view>(cautions.begin(), cautions.end()).size() == cautions.size();
}

bool says(std::vector<std::string_view> const& cautions, std::string_view word) {
    return std::any_of(cautions.begin(), cautions.end(),
                       [&](std::string_view line) { return line.find(word) != std::string_view::npos; });
}

} // namespace

TEST_CASE("where a battery is shorted, what to do of that comes first") {
    for (auto const* rule : {"wiring/shorted-loop", "wiring/shorted-battery", "matching/mixed-voltage"})
        CHECK(cautions_for(Findings{error(rule)}).front() == live_short_caution);
    CHECK(cautions_for(Findings{error("wiring/reversed-battery", 0.0)}).front() == live_short_caution);
    CHECK(cautions_for(Findings{error("wiring/reversed-battery", 24.0)}).front() != live_short_caution);
    CHECK(cautions_for(Findings{error("protection/missing")}).front() != live_short_caution);
}

TEST_CASE("on no sheet is anything said twice") {
    CHECK(each_is_said_once(cautions_for(Findings{error("wiring/shorted-loop")})));
    CHECK(each_is_said_once(hookup_cautions()));
    CHECK(each_is_said_once({measuring_cautions.begin(), measuring_cautions.end()}));
    CHECK(each_is_said_once(refusal_cautions({error("wiring/shorted-loop")})));
}

TEST_CASE("each sheet says what fits its work") {
    for (auto const* word : {"disconnect", "acid", "heavy", "inverter", "volt jacks", "one hand", "electrician"})
        CHECK_MESSAGE(says(hookup_cautions(), word), word);
    std::vector<std::string_view> const measuring(measuring_cautions.begin(), measuring_cautions.end());
    for (auto const* word : {"volt jacks", "shrouded", "one hand", "clamp", "keep clear"})
        CHECK_MESSAGE(says(measuring, word), word);
    CHECK(refusal_cautions({error("wiring/shorted-loop")}).front() == live_short_caution);
    CHECK(refusal_cautions({error("protection/missing")}) == std::vector<std::string_view>{disconnect_caution});
}

TEST_CASE("the voltage of a wiring fault is expected, a limit is allowed") {
    CHECK(is_expectation(error("wiring/system-voltage")));
    CHECK(is_expectation(error("charging/polarity")));
    CHECK_FALSE(is_expectation(error("charging/voltage")));
    CHECK_FALSE(is_expectation(error("conductor/over-ampacity")));
}

TEST_SUITE_END();
