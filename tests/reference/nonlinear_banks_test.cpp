// Banks whose loads depend on voltage, against an answer found from the far end of the line: is there an operating
// point just when physics has one, is it the upper one of two, and where there is none, how much could be given?
#include "bankwright/analyses/operating_point.hpp"
#include "reference/feeder_banks.hpp"

#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

constexpr double tie = 1e-9; // of the power: nearer to the fold than that, rounding decides

struct Seen {
    int solved = 0, refused = 0, ties = 0, two_answers = 0, charging = 0;
};

// The voltages of the operating point are those of the line, and it is the highest there is.
void check_solved(feeder::BankAndLine const& one, feeder::Best const& best, OperatingPoint const& point, Seen& seen) {
    double const size = std::max(one.line.source.volts, one.line.source.charger_volts);
    double const last = reading_of(point, one.stations.back()).voltage.value();
    std::vector<double> volts;
    // Each is exact but for rounding over four decades of resistance.
    CHECK(std::abs(one.line.lacks(last, 1.0, &volts)) < 1e-9 * size);
    for (std::size_t k = 0; k < volts.size(); ++k)
        CHECK(std::abs(reading_of(point, one.stations[k]).voltage.value() - volts[k]) < 1e-9 * size);
    // At the fold the voltage is the square root of rounding away from itself.
    CHECK(std::abs(last / best.last - 1.0) < 1e-6);
    if (one.made == feeder::Made::to_work) {
        CHECK(last > one.chosen_volts * (1.0 - 1e-6));
        seen.two_answers += last > one.chosen_volts * 1.001;
    }
}

void check_bank(feeder::BankAndLine const& one, Seen& seen) {
    auto const& line = one.line;
    double const unpowered = line.unpowered();
    auto const best = feeder::best(line, unpowered, 1.0);
    auto const point = operating_point(one.bank);
    seen.charging += line.source.charger_amps > 0.0;
    if (best.held != feeder::best(line, unpowered, best.held ? 1.0 + tie : 1.0 - tie).held) {
        ++seen.ties;
        return;
    }
    if (one.made == feeder::Made::to_work) REQUIRE(best.held);
    if (one.made == feeder::Made::to_fail) REQUIRE(!best.held);
    if (best.held) {
        ++seen.solved;
        REQUIRE(point.status == solver::Status::solved);
        check_solved(one, best, point, seen);
    } else {
        ++seen.refused;
        REQUIRE(point.status == solver::Status::no_operating_point);
        double const share = point.reachable_share.value();
        CHECK(feeder::best(line, unpowered, share * (1.0 - 1e-8)).held);
        CHECK(!feeder::best(line, unpowered, share * (1.0 + 1e-8)).held);
    }
}

} // namespace

TEST_CASE("ten thousand banks are solved where they can be, at the upper voltage, and else say how much can be given") {
    random_circuits::Dice dice(41);
    feeder::Draw draw(dice);
    Seen seen;
    for (int i = 0; i < 10000; ++i) {
        CAPTURE(i);
        auto const made = i % 10 < 4   ? feeder::Made::to_work
                          : i % 10 < 9 ? feeder::Made::at_random
                                       : feeder::Made::to_fail;
        auto one = draw.bank(made);
        while (one.line.unpowered() < 0.05 * one.line.source.volts) // turned around by constant currents
            one = draw.bank(made);
        check_bank(one, seen);
    }
    MESSAGE("solved ", seen.solved, ", refused ", seen.refused, ", at the fold ", seen.ties,
            ", with a lower answer too ", seen.two_answers, ", with a charger ", seen.charging);
    CHECK(seen.solved > 7000);
    CHECK(seen.refused > 1000);
    CHECK(seen.ties < 20);
    CHECK(seen.two_answers > 400);
    CHECK(seen.charging > 1000);
}

TEST_CASE("the share that can be given is the one that bisection finds") {
    random_circuits::Dice dice(42);
    feeder::Draw draw(dice);
    for (int i = 0; i < 150; ++i) {
        auto const one = draw.bank(feeder::Made::to_fail);
        auto const point = operating_point(one.bank);
        REQUIRE(point.status == solver::Status::no_operating_point);
        CHECK(point.reachable_share.value() == doctest::Approx(feeder::most_share(one.line)).epsilon(1e-9));
    }
}

// V^2 / 4 R is the most that a source gives to anything (maximum power transfer theorem).
TEST_CASE("one constant power alone is given up to V2 / 4R, and told its share of that beyond") {
    random_circuits::Dice dice(43);
    feeder::Draw draw(dice);
    int alone = 0;
    while (alone < 500) {
        auto const one = draw.bank(feeder::Made::to_fail);
        if (one.bank.loads.size() != 1 || !one.bank.motors.empty() || one.stations.size() != 1) continue;
        ++alone;
        auto const& line = one.line;
        double const most = line.source.volts * line.source.volts / (4.0 * (line.source.ohms + line.stations[0].ohms));
        auto const point = operating_point(one.bank);
        REQUIRE(point.status == solver::Status::no_operating_point);
        CHECK(point.reachable_share.value() == doctest::Approx(most / line.stations[0].watts).epsilon(1e-12));
    }
}
