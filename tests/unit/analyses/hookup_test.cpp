#include "bankwright/analyses/hookup.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/units/literals.hpp"
#include "support/jon_boat.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;
using namespace bankwright::support;

namespace {

std::vector<std::string> parts(HookupResult const& result) {
    std::vector<std::string> order;
    for (auto const& step : result.steps)
        order.push_back(step.part);
    return order;
}

HookupStep const& step_of(HookupResult const& result, std::string const& part) {
    auto const it =
        std::find_if(result.steps.begin(), result.steps.end(), [&](auto const& s) { return s.part == part; });
    REQUIRE(it != result.steps.end());
    return *it;
}

// What the meter would read if this were so; none: nothing that it reads there is said to come from it.
std::optional<double> reads(MeterReading const& right, MistakeKind kind, std::string const& part,
                            std::string const& onto = {}) {
    for (auto const& wrong : right.wrong)
        for (auto const& cause : wrong.causes)
            if (cause.mistake.kind == kind && cause.mistake.part == part && cause.mistake.onto == onto)
                return cause.reads.value_or(Voltage{}).value();
    return std::nullopt;
}

// 12.8 V behind 4 milliohm beside 12.6 V behind 6, linked by a milliohm each way.
Bank two_side_by_side() {
    Bank bank;
    bank.batteries = {plain_battery("A", 12.8, 4e-3), plain_battery("B", 12.6, 6e-3)};
    bank.jumpers = {plain_run("p", "A+", "B+", 1e-3), plain_run("n", "A-", "B-", 1e-3)};
    return bank;
}

} // namespace

TEST_CASE("dead leads come first, then the string, the live lead, the negative lead, the plug, and the breaker last") {
    auto const result = hookup(jon_boat());
    CHECK(parts(result) == std::vector<std::string>{"main", "tail-p", "tail-n", "J1", "J2", "feed", "return", "bow",
                                                    "CB", "bow", "CB", "bow", "CB"});
    CHECK(step_of(result, "main").dead);
    CHECK_FALSE(step_of(result, "main").before);
    CHECK(step_of(result, "feed").first == "CB.line"); // the dead end first
    CHECK(step_of(result, "feed").last == "C+");
    CHECK(step_of(result, "return").last == "A-");
    CHECK(step_of(result, "CB").action == HookupAction::close);
    CHECK(step_of(result, "bow").action == HookupAction::read); // before it goes in
    CHECK(result.steps[result.steps.size() - 2].action == HookupAction::mate);
    for (auto const& step : result.steps)
        CHECK_FALSE(step.equalizing);
}

// 12.8, 12.6 and 12.7 V in series.
TEST_CASE("a gap between what is apart floats, and the string adds up once it is closed") {
    auto const result = hookup(jon_boat());
    auto const& first = step_of(result, "J1");
    CHECK_FALSE(first.before->expected);
    CHECK(first.after->red == "B+");
    CHECK(first.after->black == "A-");
    CHECK(first.after->expected->value() == doctest::Approx(25.4));
    // `emf` is measured: only the meter's 0.5 % and 2 digits of 0.1 V are left.
    CHECK(first.after->high.value() == doctest::Approx(25.4 * 1.005 + 0.2));
    CHECK(first.after->low.value() == doctest::Approx(25.4 * 0.995 - 0.2));
    CHECK(step_of(result, "J2").after->expected->value() == doctest::Approx(38.1));
    CHECK(result.steps.back().after->red == "troll+");
    CHECK(result.steps.back().after->expected->value() == doctest::Approx(38.1));
}

TEST_CASE("a turned battery, a jumper on a wrong post and exchanged leads show where they first can") {
    auto const result = hookup(jon_boat());
    auto const& first = step_of(result, "J1");
    CHECK(*reads(*first.after, MistakeKind::battery_turned, "A") == doctest::Approx(-0.2));
    CHECK(*reads(*first.after, MistakeKind::battery_turned, "B") == doctest::Approx(0.2));
    CHECK_FALSE(reads(*first.after, MistakeKind::battery_turned, "C")); // it is not in the string yet
    CHECK(*reads(*step_of(result, "J2").after, MistakeKind::battery_turned, "C") == doctest::Approx(12.7));
    CHECK(*reads(*first.before, MistakeKind::end_elsewhere, "J1", "A-") == doctest::Approx(12.8)); // a short to come
    CHECK(*reads(*first.after, MistakeKind::end_elsewhere, "J1", "A-") == doctest::Approx(12.6));
    auto const& breaker = *step_of(result, "CB").before;
    CHECK_FALSE(breaker.expected);
    CHECK(*reads(breaker, MistakeKind::end_elsewhere, "main", "bow-") == doctest::Approx(38.1));
}

TEST_CASE("paralleling closes one loop, whose gap and current are Ohm's") {
    auto const result = hookup(two_side_by_side());
    CHECK(parts(result) == std::vector<std::string>{"p", "n"});
    CHECK_FALSE(step_of(result, "p").equalizing);
    auto const& last = step_of(result, "n");
    REQUIRE(last.equalizing);
    CHECK(last.equalizing->gap.value() == doctest::Approx(0.2));
    CHECK(last.equalizing->expected.value() == doctest::Approx(0.2 / 12e-3));
    CHECK(last.before->expected->value() == doctest::Approx(0.2));
    CHECK(result.largest_gap.value() == doctest::Approx(0.2));
    CHECK(std::abs(*reads(*last.before, MistakeKind::battery_turned, "B")) == doctest::Approx(25.4));
}

// Both are behind 12 milliohm in all; 20 A into either is 0.24 V.
TEST_CASE("the gap may not read more than what drives a battery's charge limit") {
    auto bank = two_side_by_side();
    bank.batteries[1].max_charge = 20_A;
    auto const result = hookup(bank);
    auto const& loop = *step_of(result, "n").equalizing;
    REQUIRE(loop.gap_limit);
    CHECK(loop.gap_limit->value() == doctest::Approx(0.24));
    CHECK(loop.limited_by == "B");
}

TEST_CASE("a battery of which the charge is not stated may stand anywhere in its chemistry's span") {
    auto bank = two_side_by_side();
    for (auto& battery : bank.batteries) {
        battery.emf.reset();
        battery.chemistry = Chemistry::agm;
    }
    bank.batteries[1].charge = 80_pct;
    auto const result =
        hookup(bank, {.of_reading = 0.0, .digits = 0, .resolution = {}, .charge_within = StateOfCharge::percent(10.0)});
    auto const volts = [&](double charge) {
        return open_circuit_voltage(bank.batteries[0], StateOfCharge::of(charge), bank.system.ambient).value();
    };
    CHECK(result.batteries[0].low.value() == doctest::Approx(volts(0.0)));
    CHECK(result.batteries[0].high.value() == doctest::Approx(volts(1.0)));
    CHECK(result.batteries[1].low.value() == doctest::Approx(volts(0.7)));
    CHECK(result.batteries[1].high.value() == doctest::Approx(volts(0.9)));
    // The gap is the difference of the two, and so is its worst.
    auto const& gap = *step_of(result, "n").before;
    CHECK(gap.high.value() == doctest::Approx(volts(1.0) - volts(0.7)));
    CHECK(gap.low.value() == doctest::Approx(volts(0.0) - volts(0.9)));
}

TEST_CASE("what is taken apart goes the other way, breaker and plug first, and reads nothing across what was parted") {
    auto const result = hookup(jon_boat());
    std::vector<std::string> order;
    for (auto const& step : result.disconnect)
        order.push_back(step.part);
    CHECK(order == std::vector<std::string>{"CB", "bow", "return", "feed", "J2", "J1", "tail-n", "tail-p", "main"});
    CHECK(result.disconnect[0].then->red == "troll+");
    CHECK_FALSE(result.disconnect[0].then->expected);
    CHECK(result.disconnect[0].still_live->expected->value() == doctest::Approx(38.1));
    CHECK(result.disconnect[2].part == "return");
    CHECK(result.disconnect[2].first == "A-");
    CHECK_FALSE(result.disconnect.back().still_live); // three batteries, each alone
}

TEST_CASE("of several devices the one that keeps every load dead is closed last") {
    auto bank = jon_boat();
    bank.cables.push_back(plain_run("tap", "CB.load", "F.line", 1e-3));
    bank.cables.push_back(plain_run("to-lamp", "F.load", "lamp+", 1e-3));
    bank.cables.push_back(plain_run("from-lamp", "lamp-", "A-", 1e-3));
    auto fuse = named<ProtectiveDevice>("F");
    fuse.rating = 10_A;
    bank.fuses = {fuse};
    auto lamp = named<Load>("lamp");
    lamp.current = 2_A;
    bank.loads = {lamp};
    auto const order = parts(hookup(bank));
    CHECK(order.back() == "CB");
    CHECK(std::find(order.begin(), order.end(), "F") < std::find(order.begin(), order.end(), "CB"));
}

TEST_CASE("what the file has open stays open") {
    auto bank = jon_boat();
    bank.breakers[0].closed = false;
    auto const result = hookup(bank);
    CHECK(result.left_open == std::vector<std::string>{"CB"});
    CHECK(parts(result).back() == "bow");
}

TEST_CASE("a short is not hooked up") {
    auto bank = jon_boat();
    bank.jumpers.push_back(plain_run("wrong", "B+", "B-", 1e-3));
    CHECK(unfit_for_hookup(bank) == "a loop shorts battery `B`");
    CHECK_THROWS_AS(hookup(bank), std::invalid_argument);
    CHECK_FALSE(unfit_for_hookup(jon_boat()));
    CHECK(unfit_for_hookup(Bank{}) == "it has no battery");
}
