// The proof of the judged hook-up: a rigger with one mistake in him follows the sheet; is he stopped before anything
// flows, and told which mistake it is? One without is never stopped.
#include "hookups/rigger.hpp"
#include "miswires/proof.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <memory>
#include <random>
#include <string>

#include <doctest/doctest.h>

using namespace hookups;

namespace {

struct Row {
    int made = 0, same = 0, alike = 0, unseen = 0, tried = 0, stopped = 0, unflowed = 0, told = 0, exact = 0,
        further = 0;
};

bool is_it(Mistake const& said, miswires::Miswire const& miswire) {
    auto const& culprit = miswire.culprits.front();
    auto const of = [&](MistakeKind kind) { return said.kind == kind && said.part == culprit; };
    if (miswire.kind == "battery turned") return of(MistakeKind::battery_turned);
    if (miswire.kind == "end on another post")
        return of(MistakeKind::end_elsewhere) && miswire.what.ends_with(" to " + said.onto) &&
               miswire.what.find(" from " + said.at + " ") != std::string::npos;
    if (miswire.kind == "conductor missing")
        return said.kind == MistakeKind::not_joined && miswire.what == said.part + " missing";
    if (miswire.kind == "conductor across")
        return said.kind == MistakeKind::across && (miswire.what == "extra conductor " + said.at + " to " + said.onto ||
                                                    miswire.what == "extra conductor " + said.onto + " to " + said.at);
    if (miswire.kind == "device bypassed") return of(MistakeKind::bypassed);
    return of(MistakeKind::leads_exchanged);
}

bool is_first(HookupJudgment const& judgment, miswires::Miswire const& miswire) {
    auto const& first = judgment.found->chances.front().alike;
    return std::any_of(first.begin(), first.end(), [&](auto const& said) { return is_it(said, miswire); });
}

// It is the first that is named, or like it by the meter; or it is the same part that is out of its place in another
// way.
bool is_told(HookupJudgment const& judgment, miswires::Miswire const& miswire) {
    if (!judgment.found || judgment.found->chances.empty()) return false;
    if (is_first(judgment, miswire)) return true;
    auto const& first = judgment.found->chances.front().alike;
    if (first.empty() || first.front().part.empty()) return false;
    for (auto const& chance : judgment.found->chances)
        for (auto const& said : chance.alike)
            if (is_it(said, miswire) && said.part == first.front().part) return true;
    return false;
}

std::string words(HookupJudgment const& judgment) {
    if (!judgment.found) return "nothing";
    std::string said;
    for (std::size_t g = 0; g < std::min<std::size_t>(3, judgment.found->chances.size()); ++g) {
        auto const& chance = judgment.found->chances[g];
        said += " [" + std::to_string(chance.probability);
        for (std::size_t m = 0; m < std::min<std::size_t>(4, chance.alike.size()); ++m)
            said += " " + std::to_string(static_cast<int>(chance.alike[m].kind)) + ":" + chance.alike[m].part + ":" +
                    chance.alike[m].at + ">" + chance.alike[m].onto;
        said += " of " + std::to_string(chance.alike.size()) + "]";
    }
    return said;
}

// What no short lead reaches from one place to another is no mistake that anybody makes; the lead that nobody drew is a
// short one, as its 0.4 mohm say.
bool is_within_reach(Bank const& bank) {
    for (auto const* runs : {&bank.jumpers, &bank.cables})
        for (auto const& run : *runs)
            if (run.conductor.length.value_or(0.0 * si::meter) < 1.0 * si::meter &&
                traces::is_on_the_bow(run.from) != traces::is_on_the_bow(run.to))
                return false;
    return true;
}

} // namespace

TEST_CASE("one mistake is stopped before anything flows, and named") {
    auto const* wanted = std::getenv("HOOKUP_MISTAKES");
    int const stride = !wanted ? 97 : std::string(wanted) == "all" ? 1 : std::atoi(wanted);
    std::mt19937 random(20261201);
    std::map<std::string, Row> rows;
    Row all;
    int number = 0, shown = 0;
    for (auto const& shape : miswires::all_shapes()) {
        if (shape.series > 3 || shape.parallel > 2) continue;
        miswires::Good const good(shape);
        auto const bank = traces::on_a_boat(good.bank);
        std::unique_ptr<HookupJudge> judge;
        for (auto const& miswire : miswires::MiswireMaker(bank).all()) {
            if (number++ % stride) continue;
            auto const wired = miswires::with(bank, miswire);
            if (!is_within_reach(wired)) continue;
            bool const same = good.is_one_of_these(miswires::circuit_of(wired));
            bool const alike =
                !same && (miswires::only_sharing_changes(bank, wired) || miswires::only_charging_changes(bank, wired));
            auto& row = rows[miswire.kind];
            for (auto* one : {&row, &all}) {
                ++one->made;
                one->same += same;
                one->alike += alike;
            }
            if (same || alike) continue;
            if (!judge) judge = std::make_unique<HookupJudge>(bank);
            Rigger rigger(bank, wired, number % 2 == 0, random);
            auto const outcome = hook_up(*judge, rigger, 8);
            // Where no voltmeter could have seen it, no sheet can warn.
            bool const unseen = !outcome.shown && (!outcome.stopped || outcome.flowed);
            for (auto* one : {&row, &all})
                one->unseen += unseen;
            if (unseen) {
                if (std::getenv("HOOKUP_UNSEEN"))
                    std::printf("UNSEEN %s: %s\n", good.title.c_str(), miswire.what.c_str());
                continue;
            }
            bool const told = outcome.stopped && is_told(outcome.last, miswire);
            for (auto* one : {&row, &all}) {
                ++one->tried;
                one->stopped += outcome.stopped;
                one->unflowed += outcome.stopped && !outcome.flowed;
                one->told += told;
                one->exact += told && is_first(outcome.last, miswire);
                one->further += outcome.further;
            }
            if ((outcome.stopped && !outcome.flowed && told) || shown++ >= 60) continue;
            std::printf("%s %s: %s: at %s, %d further:%s\n",
                        !outcome.stopped ? "NOT STOPPED"
                        : outcome.flowed ? "FLOWED"
                                         : "NOT TOLD",
                        good.title.c_str(), miswire.what.c_str(), outcome.at.c_str(), outcome.further,
                        words(outcome.last).c_str());
        }
    }
    auto const print = [](std::string const& title, Row const& row) {
        std::printf("%-24s %7d %6d %6d %6d %7d %8d %9d %7d %7d %8.1f\n", title.c_str(), row.made, row.same, row.alike,
                    row.unseen, row.tried, row.stopped, row.unflowed, row.told, row.exact,
                    row.tried ? 1.0 * row.further / row.tried : 0.0);
    };
    std::printf("%-24s %7s %6s %6s %6s %7s %8s %9s %7s %7s %8s\n", "", "made", "same", "shares", "unseen", "tried",
                "stopped", "no flow", "told", "exact", "further");
    for (auto const& [title, row] : rows)
        print(title, row);
    print("all", all);
    CHECK(all.tried > 0);
    // A lead from the bank to a load that nothing parts from it is seen too late, or never, in one of twenty.
    auto const& across = rows["conductor across"];
    CHECK(all.unflowed - across.unflowed >= 0.99 * (all.tried - across.tried));
    CHECK(all.unflowed >= 0.98 * all.tried);
    CHECK(all.told >= 0.98 * all.tried); // of 200 two or three more or less; of 1386 it was 99.2 %
}

TEST_CASE("a sound bank is never stopped") {
    std::mt19937 random(20261202);
    for (auto const& shape : miswires::all_shapes()) {
        if (shape.series > 3 || shape.parallel > 2) continue;
        auto const bank = traces::on_a_boat(miswires::BankBuilder(shape).build());
        HookupJudge const judge(bank);
        for (bool const conducts : {false, true}) {
            Rigger rigger(bank, bank, conducts, random);
            auto const outcome = hook_up(judge, rigger, 0);
            auto const title = miswires::describe(shape);
            CAPTURE(title);
            CAPTURE(outcome.at);
            CHECK_FALSE(outcome.stopped);
            CHECK(outcome.last.state == HookupState::complete);
        }
    }
}
