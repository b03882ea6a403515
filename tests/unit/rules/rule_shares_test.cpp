#include "bankwright/analyses/discharge.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/rules/rule_shares.hpp"
#include "unit/sizing/random_boats.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("the shares are those of checking every sample bank by hand") {
    auto const boat = boats::RandomBoat(9).make();
    RuleShareOptions options;
    options.samples = 60;
    options.seed = 5;
    options.spreads.capacity = Spread::percent(10);
    std::size_t called = 0;
    options.on_draw = [&](std::size_t done) { CHECK(done == ++called); };
    auto const shares = rule_shares(boat, options);
    CHECK(called == 60);
    std::map<std::string, std::size_t> fired;
    double seconds = 0.0;
    for (std::size_t n = 0; n < options.samples; ++n) {
        auto const drawn = sample_bank(boat, options.spreads, options.seed, n);
        std::set<std::string> rules;
        for (auto const& finding : check(drawn).findings)
            if (finding.level != Level::note && !finding.accepted && finding.rule != "matching/mixed-capacity")
                rules.insert(finding.rule); // that one compares labels, which a sample does not change
        for (auto const& rule : rules)
            ++fired[rule];
        seconds += discharge(drawn).runtime.value();
    }
    CHECK_FALSE(fired.empty());
    for (auto const& entry : fired) { // a name bound to a part of it could not be captured, says clang 14
        auto const& rule = entry.first;
        auto const samples = entry.second;
        CAPTURE(rule);
        bool found = false;
        for (auto const& share : shares.rules)
            if (share.rule == rule) {
                found = true;
                CHECK(share.samples == samples);
            }
        CHECK(found);
    }
    CHECK(std::is_sorted(shares.rules.begin(), shares.rules.end(),
                         [](auto const& a, auto const& b) { return a.samples > b.samples; }));
    CHECK(shares.rules.front().samples > shares.rules.back().samples);
    REQUIRE(shares.run_time);
    CHECK(shares.run_time->mean.value() == doctest::Approx(seconds / 60.0).epsilon(1e-4));
    CHECK(shares.run_time->least <= shares.run_time->mean);
}

TEST_CASE("what the bank as stated gives is listed by its rule, in the samples or not") {
    auto const boat = boats::RandomBoat(9).make();
    RuleShareOptions options;
    options.samples = 0;
    std::set<std::string> stated, listed;
    for (auto const& finding : check(boat).findings)
        if (finding.level != Level::note && !finding.accepted) stated.insert(finding.rule);
    for (auto const& share : rule_shares(boat, options).rules) {
        listed.insert(share.rule);
        CHECK(share.as_stated);
        CHECK(share.samples == 0);
    }
    CHECK_FALSE(stated.empty());
    CHECK(listed == stated);
}

TEST_CASE("with nothing that varies each rule fires always or never") {
    auto const boat = boats::RandomBoat(2).make();
    RuleShareOptions options;
    auto const zero = Spread::of(0.0);
    options.spreads = {zero, zero, zero, zero, zero, zero};
    options.samples = 5;
    for (auto const& share : rule_shares(boat, options).rules) {
        CAPTURE(share.rule);
        CHECK(share.samples == 5);
        CHECK(share.as_stated);
    }
}
