#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/sweep.hpp"
#include "support/jon_boat.hpp"

#include <atomic>
#include <cmath>
#include <cstddef>
#include <limits>
#include <stdexcept>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

double volts_of(Bank const& bank, char const* part, Moment const& moment = {}) {
    return reading_of(operating_point(bank, {.moment = moment}), part).voltage.value();
}

} // namespace

// V = E - I R along one string, whatever the number of lanes that are left over.
TEST_CASE("a sweep over a resistance is Ohm's law") {
    auto const bank = support::jon_boat(); // 38.1 V behind 50 mohm, of which A is 4
    std::vector<double> ohms;
    for (int i = 0; i < 37; ++i)
        ohms.push_back(1e-3 * (1 + i));
    Moment moment;
    moment.loads = LoadsAre::constant_current;
    moment.current = 40.0 * si::ampere;
    for (int const threads : {1, 3}) {
        auto const answers = sweep(bank, {{"A", "resistance", ohms}},
                                   {{Measure::voltage, "troll"}, {Measure::current, "A"}, {Measure::terminal, "A-"}},
                                   {moment, threads, nullptr});
        REQUIRE(answers.banks() == ohms.size());
        for (std::size_t i = 0; i < ohms.size(); ++i) {
            CHECK(answers.of(0)[i] == doctest::Approx(38.1 - 40.0 * (0.046 + ohms[i])).epsilon(1e-12));
            CHECK(answers.of(1)[i] == doctest::Approx(40.0).epsilon(1e-12));
            CHECK(answers.of(2)[i] == 0.0); // the reference
        }
    }
}

TEST_CASE("a sweep through a part's physics is its banks one by one") {
    auto const bank = support::jon_boat();
    std::vector<double> const throttles{0.2, 0.5, 1.0};
    std::vector<double> const emfs{12.0, 12.5, 0.0};
    auto const answers =
        sweep(bank, {{"troll", "throttle", throttles}, {"B", "emf", emfs}}, {{Measure::voltage, "troll"}});
    for (std::size_t i = 0; i < throttles.size(); ++i) {
        auto one = bank;
        one.motors.front().throttle = Throttle::of(throttles[i]);
        one.batteries[1].emf = emfs[i] * si::volt;
        CHECK(answers.of(0)[i] == doctest::Approx(volts_of(one, "troll")).epsilon(1e-10));
    }
}

TEST_CASE("without a key there is one bank, without a value none") {
    auto const bank = support::jon_boat();
    CHECK(sweep(bank, {}, {{Measure::voltage, "troll"}}).of(0)[0] == doctest::Approx(volts_of(bank, "troll")));
    std::vector<double> const no_values;
    CHECK(sweep(bank, {{"A", "resistance", no_values}}, {{Measure::voltage, "troll"}}).banks() == 0);
}

TEST_CASE("what cannot be swept is refused by name") {
    auto const bank = support::jon_boat();
    std::vector<double> const one{5e-3}, two{5e-3, 6e-3}, nothing{std::numeric_limits<double>::quiet_NaN()};
    std::vector<Measure> const troll{{Measure::voltage, "troll"}};
    CHECK_THROWS_AS(sweep(bank, {{"Z", "resistance", one}}, troll), std::out_of_range);
    CHECK_THROWS_AS(sweep(bank, {{"A", "resistence", one}}, troll), std::out_of_range);
    CHECK_THROWS_AS(sweep(bank, {{"A", "resistance", one}}, {{Measure::terminal, "nowhere"}}), std::out_of_range);
    CHECK_THROWS_AS(sweep(bank, {{"A", "chemistry", one}}, troll), std::invalid_argument);
    CHECK_THROWS_AS(sweep(bank, {{"A", "resistance", nothing}}, troll), std::invalid_argument);
    CHECK_THROWS_AS(sweep(bank, {{"troll", "throttle", std::vector<double>{1.5}}}, troll), std::invalid_argument);
    CHECK_THROWS_WITH_AS(sweep(bank, {{"A", "resistance", one}, {"B", "resistance", two}}, troll),
                         "`B.resistance` has 2 values, `A.resistance` has 1; each needs one a bank",
                         std::invalid_argument);
    Moment beyond;
    beyond.throttle = Throttle::of(1.5);
    CHECK_THROWS_AS(sweep(bank, {}, troll, {beyond, 1, nullptr}), std::invalid_argument);
    CHECK_THROWS_AS(sweep(bank, {}, troll, {{}, 0, nullptr}), std::invalid_argument);
}

TEST_CASE("a sweep that is told to stop comes back") {
    std::atomic<bool> const stop = true;
    std::vector<double> const ohms(100'000, 5e-3);
    CHECK(sweep(support::jon_boat(), {{"A", "resistance", ohms}}, {{Measure::voltage, "troll"}}, {{}, 1, &stop})
              .banks() == ohms.size());
}
