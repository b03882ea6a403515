#include "bankwright/analyses/discharge.hpp"
#include "bankwright/planning/plan.hpp"
#include "bankwright/planning/plan_file.hpp"
#include "bankwright/planning/wish_words.hpp"
#include "bankwright/rules/inspect.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <random>
#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("planning/plan");

namespace {

Wish wish_of(WishWords const& words) {
    auto const read = read_wish(words);
    for (auto const& problem : read.problems)
        FAIL_CHECK(problem.message);
    REQUIRE(read.wish);
    return *read.wish;
}

// A wish at random, as people have them: some cannot be met.
class AnyWish {
public:
    explicit AnyWish(unsigned seed) : random_(seed) {}

    WishWords make() {
        WishWords words;
        words.system = one_of({"12", "24 V", "36v", "48 volts"});
        words.motor =
            one_of({number(2, 120) + " A", number(2, 60) + "a", number(20, 150) + " lb", number(50, 4000) + " W"});
        words.run = one_of({number(2, 40) + " ft", number(1, 12) + "m", number(5, 25)});
        words.runtime = one_of({number(1, 8), number(20, 240) + " min", number(1, 4) + "h30"});
        if (chance(0.4)) words.throttle = number(20, 100) + "%";
        if (chance(0.5))
            words.chemistry = one_of({"agm", "flooded", "lithium", "gel"});
        else if (chance(0.4))
            words.battery = one_of({"12 V AGM 100 Ah", "6v wet 220ah", "12 V lithium 100 Ah", "12 V AGM 80 Ah",
                                    "24 V lifepo4 60 Ah", "12 V gel 60 Ah", "8 V flooded 165 Ah"});
        if (chance(0.4)) words.charger = number(2, 40) + " A";
        if (chance(0.3)) words.drop = number(2, 10) + " %";
        if (chance(0.15))
            words.stock = one_of({"10 AWG, 8 AWG, 6 AWG, 4 AWG, 2 AWG", "6 AWG", "10 mm2, 16 mm2, 25 mm2, 50 mm2"});
        return words;
    }

private:
    bool chance(double probability) { return std::uniform_real_distribution<double>(0.0, 1.0)(random_) < probability; }
    std::string number(int least, int most) {
        return std::to_string(std::uniform_int_distribution<int>(least, most)(random_));
    }
    std::string one_of(std::vector<std::string> const& words) {
        return words[std::uniform_int_distribution<std::size_t>(0, words.size() - 1)(random_)];
    }

    std::mt19937 random_;
};

std::string told(WishWords const& words) {
    std::string text;
    for (std::size_t p = 0; p + 1 < wish_part_names.size(); ++p)
        text += std::string(wish_part_names[p]) + "=" + words.of(static_cast<WishPart>(p)) + " ";
    return text;
}

} // namespace

// PLAN_WISHES asks for more of them.
TEST_CASE("each file that is written passes every rule, and a refusal names a part of the wish") {
    auto const stock = usual_parts();
    auto const* more = std::getenv("PLAN_WISHES");
    auto const seeds = more ? static_cast<unsigned>(std::stoul(more)) : 150U;
    unsigned planned = 0;
    for (unsigned seed = 0; seed < seeds; ++seed) {
        auto const words = AnyWish(seed).make();
        auto const wish = wish_of(words);
        CAPTURE(seed);
        CAPTURE(told(words));
        auto const result = plan(wish, stock, {1});
        if (result.banks.empty()) {
            REQUIRE(result.problems.size() == 1);
            auto const& problem = result.problems.front();
            CAPTURE(problem.message);
            CHECK_FALSE(problem.message.empty());
            CHECK_FALSE(problem.help.empty());
            auto const is_said = problem.part == WishPart::system || problem.part == WishPart::motor ||
                                 problem.part == WishPart::run || problem.part == WishPart::runtime ||
                                 !words.of(problem.part).empty();
            CHECK(is_said);
            continue;
        }
        ++planned;
        auto const& bank = result.banks.front();
        auto const text = plan_file(wish, bank);
        CAPTURE(text);
        auto const read = inspect(text);
        for (auto const& finding : read.findings)
            FAIL_CHECK(finding.rule << ": " << finding.message);
        CHECK(read.bank == bank.bank);
        CHECK(read.arrangement == bank.arrangement);

        // What was asked for is what the file says.
        CHECK(read.bank.system.voltage == wish.system);
        CHECK(read.bank.system.runtime == wish.runtime);
        REQUIRE(read.bank.motors.size() == 1);
        CHECK(read.bank.motors[0].current->value() == doctest::Approx(motor_current(wish).value()));
        for (auto const& cable : read.bank.cables)
            if (cable.conductor.id == "main" || cable.conductor.id == "return")
                CHECK(cable.conductor.length == wish.run);
        if (wish.chemistry) CHECK(read.bank.batteries[0].chemistry == wish.chemistry);
        CHECK(read.bank.chargers.size() == (wish.charger ? 1 : 0));
        for (auto const* runs : {&read.bank.jumpers, &read.bank.cables})
            for (auto const& run : *runs)
                if (!wish.stock.empty())
                    CHECK(std::find(wish.stock.begin(), wish.stock.end(), *run.conductor.size) != wish.stock.end());

        // And it lasts: asked with the accuracy of `discharge`, not with that of the search.
        DischargeOptions options;
        options.keep_samples = false;
        auto const run = discharge(read.bank, options);
        CHECK(run.to_reserve.value_or(run.runtime) >= wish.runtime * 0.999);
    }
    CHECK(planned > seeds / 3);
}

TEST_CASE("what the next smaller would have broken is so") {
    auto const stock = usual_parts();
    auto const wish = wish_of({"36 V", "45 A", "20 ft", "4 h", "", "12 V AGM 100 Ah", "", "10 A", "", ""});
    auto const result = plan(wish, stock);
    REQUIRE_FALSE(result.banks.empty());
    auto const& bank = result.banks.front();
    CHECK(bank.model == "agm-31");
    // 45 A for 4 h are 180 Ah; half of 100 Ah is 50, and less at such a current.
    CHECK(bank.strings >= 4);
    std::map<std::string, PlanChoice> choices;
    for (auto const& choice : bank.choices)
        choices[choice.what] = choice;
    CHECK(choices.at("strings in parallel").broken.find("wanted 4 h") != std::string::npos);
    CHECK(choices.at("conductors").broken.find("[conductor/") != std::string::npos);
    for (auto const* what : {"main breaker", "main fuse"})
        if (choices.count(what)) CHECK(choices.at(what).broken.find("[protection/") != std::string::npos);
    CHECK(choices.count("charger") == 1);
}

TEST_CASE("banks side by side: the fewest strings first, each of other batteries") {
    auto const wish = wish_of({"24 V", "30 A", "15 ft", "2 h", "", "", "", "", "", ""});
    auto const result = plan(wish, usual_parts());
    REQUIRE(result.banks.size() > 2);
    std::vector<std::string> models;
    for (std::size_t i = 0; i < result.banks.size(); ++i) {
        models.push_back(result.banks[i].model);
        CHECK(check(result.banks[i].bank).findings.empty());
        if (i > 0) CHECK(result.banks[i - 1].strings <= result.banks[i].strings);
    }
    std::sort(models.begin(), models.end());
    CHECK(std::adjacent_find(models.begin(), models.end()) == models.end());
    CHECK(plan(wish, usual_parts(), {2}).banks.size() == 2);
    CHECK_THROWS_AS(plan(wish, usual_parts(), {0}), std::invalid_argument);
}

TEST_CASE("which part of a wish cannot be met") {
    struct Case {
        WishWords words;
        WishPart part;
    };
    std::vector<Case> const cases{
        {{"36 V", "45 A", "20 ft", "90 h", "", "", "", "", "", ""}, WishPart::runtime},
        {{"36 V", "400 A", "20 ft", "8 h", "", "", "", "", "", ""}, WishPart::motor},
        {{"30 V", "20 A", "20 ft", "1 h", "", "12 V AGM 100 Ah", "", "", "", ""}, WishPart::battery},
        {{"36 V", "20 A", "20 ft", "1 h", "", "", "nmc", "", "", ""}, WishPart::chemistry},
        {{"12 V", "100 A", "60 ft", "20 min", "", "", "", "", "1 %", ""}, WishPart::drop},
        {{"12 V", "100 A", "150 ft", "20 min", "", "", "", "", "", ""}, WishPart::run},
        {{"12 V", "10 A", "10 ft", "1 h", "", "12 V AGM 35 Ah", "", "200 A", "", ""}, WishPart::charger},
    };
    for (auto const& one : cases) {
        CAPTURE(told(one.words));
        auto const result = plan(wish_of(one.words), usual_parts());
        CHECK(result.banks.empty());
        REQUIRE(result.problems.size() == 1);
        CAPTURE(result.problems[0].message);
        CHECK(name(result.problems[0].part) == name(one.part));
    }
}

TEST_SUITE_END();
