#include "bankwright/analyses/hookup_judge.hpp"
#include "bankwright/units/literals.hpp"
#include "support/jon_boat.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;
using namespace bankwright::support;

namespace {

LogEntry entry(LogWhen when, std::string part, Shown reads) { return {when, std::move(part), {}, {}, reads, {}}; }

// What the sheet expects, to every question before the first that `stops` holds.
template <class Stops>
std::vector<LogEntry> right_answers(HookupJudge const& judge, Stops&& stops) {
    std::vector<LogEntry> entries;
    for (auto const& question : judge.questions()) {
        if (stops(question)) break;
        auto const* right = right_reading(question, judge.sheet());
        entries.push_back(entry(question.when, question.part,
                                right && right->expected ? Shown(*right->expected) : Shown(AsExpected{})));
    }
    return entries;
}

bool names(MistakeChance const& chance, MistakeKind kind, std::string const& part) {
    return std::any_of(chance.alike.begin(), chance.alike.end(),
                       [&](auto const& one) { return one.kind == kind && one.part == part; });
}

} // namespace

TEST_CASE("every question answered as expected, the hook-up is complete") {
    HookupJudge const judge(jon_boat());
    auto const judged = judge.judge(right_answers(judge, [](auto const&) { return false; }));
    CHECK(judged.state == HookupState::complete);
    CHECK_FALSE(judged.at);
    CHECK(judged.left_out.empty());
    CHECK(judged.strays.empty());
}

TEST_CASE("across the gap of J1 a battery stands: its end is held to a wrong post") {
    HookupJudge const judge(jon_boat());
    auto entries = right_answers(judge, [](auto const& q) { return q.part == "J1" && q.when == LogWhen::before; });
    entries.push_back(entry(LogWhen::before, "J1", Voltage(12.8_V)));
    auto judged = judge.judge(entries);
    CHECK(judged.state == HookupState::stopped);
    REQUIRE(judged.found);
    if (judged.again) entries.push_back(entries.back());
    for (int i = 0; i < 8; ++i) { // read by the posts' names, nothing is wrong
        judged = judge.judge(entries);
        if (!judged.found->next) break;
        auto const& [red, black] = std::pair{judged.found->next->red, judged.found->next->black};
        bool const own = red.front() == black.front() && std::string("ABC").find(red.front()) != std::string::npos;
        entries.push_back({LogWhen::also, {}, red, black, own ? Voltage(12.8_V) : Voltage(0.0_V), {}});
    }
    CHECK(names(judged.found->chances.front(), MistakeKind::end_elsewhere, "J1"));
    entries.push_back(entry(LogWhen::before, "J1", NoPath{})); // corrected
    judged = judge.judge(entries);
    CHECK(judged.state == HookupState::asking);
    CHECK(judge.questions()[*judged.at].part == "J1");
    CHECK(judge.questions()[*judged.at].when == LogWhen::after);
}

TEST_CASE("a battery that reads backwards alone is turned around") {
    HookupJudge const judge(jon_boat());
    auto const judged = judge.judge({entry(LogWhen::alone, "A", Voltage(-12.8_V))});
    REQUIRE(judged.found);
    CHECK(names(judged.found->chances.front(), MistakeKind::battery_turned, "A"));
}

TEST_CASE("what stands on no line of the sheet is a stray, what was passed over is left out") {
    HookupJudge const judge(jon_boat());
    auto const judged = judge.judge({entry(LogWhen::alone, "C", AsExpected{}), entry(LogWhen::before, "A", NoPath{})});
    CHECK(judged.strays == std::vector<std::size_t>{1});
    CHECK(judged.left_out == std::vector<std::size_t>{0, 1}); // A and B alone
    CHECK(judged.at == std::size_t{0});
}

TEST_CASE("an answer in another unit is a caller's mistake") {
    HookupJudge const judge(jon_boat());
    CHECK_THROWS_AS(judge.judge({entry(LogWhen::alone, "A", Resistance(3.0 * si::ohm))}), std::invalid_argument);
    CHECK_THROWS_AS(judge.judge({entry(LogWhen::run, "main", Voltage(3.0_V))}), std::invalid_argument);
    CHECK_THROWS_AS(judge.judge({entry(LogWhen::done, "main", Voltage(3.0_V))}), std::invalid_argument);
}
