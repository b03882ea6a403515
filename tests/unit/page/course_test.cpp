#include "bankwright/page/chapters/course.hpp"
#include "support/jon_boat.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

// Two batteries side by side, the third ahead of them: 100, 50 and 0 % after no time, 1000 s and 3000 s.
std::vector<BatterySample> samples() {
    std::vector<BatterySample> all;
    for (auto const& [time, charge] : {std::pair{0.0, 1.0}, {1000.0, 0.5}, {3000.0, 0.0}}) {
        BatterySample sample;
        sample.time = time * si::second;
        sample.charge = {StateOfCharge::of(charge), StateOfCharge::of(charge), StateOfCharge::of(0.5 + charge / 2.0)};
        all.push_back(sample);
    }
    return all;
}

} // namespace

TEST_CASE("batteries that go the same way share a curve and a column") {
    auto const found = page::courses(support::jon_boat(), samples());
    REQUIRE(found.size() == 2);
    CHECK(found[0].batteries == std::vector<std::string>{"A", "B"});
    CHECK(found[0].words(support::jon_boat(), "all") == "A B");
    CHECK(found[1].batteries == std::vector<std::string>{"C"});
}

TEST_CASE("the rows of a table are a round time apart and end with the last") {
    CHECK(page::round_times(3000.0) ==
          std::vector<double>{0.0, 300.0, 600.0, 900.0, 1200.0, 1500.0, 1800.0, 2100.0, 2400.0, 2700.0, 3000.0});
    CHECK(page::round_times(124.0) == std::vector<double>{0.0, 20.0, 40.0, 60.0, 80.0, 100.0, 124.0});
    CHECK(page::round_times(0.0) == std::vector<double>{0.0});
    for (double const end : {1.0, 59.0, 4000.0, 86400.0, 360000.0})
        CHECK(page::round_times(end).size() <= 14);
}

TEST_CASE("between two samples the charge goes evenly") {
    CHECK(page::charge_percent(samples(), 0, 0.0) == doctest::Approx(100.0));
    CHECK(page::charge_percent(samples(), 0, 500.0) == doctest::Approx(75.0));
    CHECK(page::charge_percent(samples(), 0, 2000.0) == doctest::Approx(25.0));
    CHECK(page::charge_percent(samples(), 2, 9000.0) == doctest::Approx(50.0));
}
