#include "bankwright/analyses/trace/reading_likelihood.hpp"
#include "bankwright/analyses/trace/voltage_outlook.hpp"
#include "bankwright/network/build.hpp"
#include "support/jon_boat.hpp"

#include <cmath>
#include <random>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("analyses/reading_likelihood");

// Two readings that share a source of spread: covariance {{0.0125, 0.01}, {0.01, 0.0225}}, residuals 0.1 and 0.15.
TEST_CASE("the likelihood is that of the normal distribution, by hand and by SciPy") {
    std::vector<ExpectedReading> const expected{{12.0, {0.1, 0.0}, 0.0}, {24.0, {0.1, 0.1}, 0.0}};
    ReadingLikelihood const likelihood(expected, {12.1, 24.15}, {0.05, 0.05});
    double const determinant = 0.0125 * 0.0225 - 0.01 * 0.01;
    double const squares =
        (0.0225 * 0.1 * 0.1 - 2 * 0.01 * 0.1 * 0.15 + 0.0125 * 0.15 * 0.15) / determinant; // r' C^-1 r
    CHECK(likelihood.logarithm() == doctest::Approx(-0.5 * std::log(determinant) - 0.5 * squares).epsilon(1e-12));
    // scipy.stats.multivariate_normal.logpdf([12.1, 24.15], [12, 24], [[.0125, .01], [.01, .0225]]) + log(2 pi), 1.10.1
    CHECK(likelihood.logarithm() == doctest::Approx(3.7388511148733743).epsilon(1e-12));
    CHECK(likelihood.misfit() == doctest::Approx(std::sqrt(squares / 2)).epsilon(1e-12));
}

TEST_CASE("a reading's own error and its own spread add up") {
    ReadingLikelihood const one({{5.0, {}, 0.4}}, {6.0}, {0.3});
    CHECK(one.misfit() == doctest::Approx(1.0 / 0.5));
    CHECK(one.logarithm() == doctest::Approx(-std::log(0.5) - 2.0));
}

TEST_CASE("without readings all wirings are as likely") {
    ReadingLikelihood const none(std::vector<ExpectedReading>{}, {}, {});
    CHECK(none.logarithm() == 0.0);
    CHECK(none.misfit() == 0.0);
}

// Against drawing the parts at random and solving each time: the jon boat with its spreads, at 30 A.
TEST_CASE("means and spreads of readings are those of banks with every part drawn at random") {
    auto const bank = support::jon_boat();
    Moment moment;
    moment.loads = LoadsAre::constant_current;
    moment.current = 30.0 * si::ampere;
    auto const network = build(bank, moment);
    PartSpread const spread{0.008, 0.1};
    ExpectedReadings const readings(wiring_of(network), spread);
    auto const red = node_of(network, "bow.plug+"), black = node_of(network, "A+");
    auto const reading = readings.volts_reading(red, black);
    double variance = 0.0;
    for (double s : reading.sensitivities)
        variance += s * s;

    std::mt19937 random(7);
    std::normal_distribution<double> normal;
    int const draws = 4000;
    double sum = 0.0, squares = 0.0;
    for (int n = 0; n < draws; ++n) {
        auto wiring = wiring_of(network);
        for (auto& branch : wiring.circuit.branches) {
            branch.emf *= 1.0 + spread.emf * normal(random);
            branch.resistance *= 1.0 + spread.resistance * normal(random);
        }
        ExpectedReadings const drawn(wiring, {0.0, 0.0});
        double const volts = drawn.volts(red, black);
        sum += volts;
        squares += volts * volts;
    }
    double const mean = sum / draws, deviation = std::sqrt(squares / draws - mean * mean);
    // Four standard errors of 4000 draws: of a mean 0.063 deviations, of a deviation 4.5 %.
    CHECK(std::abs(reading.mean - mean) < 0.063 * deviation);
    CHECK(std::sqrt(variance) == doctest::Approx(deviation).epsilon(0.045));
}

// y1 = z, y2 = z, each with its error: given y1, y2's mean moves by s^2 / (s^2 + e^2) of the residual.
TEST_CASE("what was read narrows what will be read") {
    auto const bank = support::jon_boat();
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    auto const network = build(bank, moment);
    ExpectedReadings readings(wiring_of(network), {0.01, 0.0});
    auto const red = node_of(network, "A+"), black = node_of(network, "A-");
    double const emf = 12.8, s = 0.01 * emf, e = 0.05;
    ReadingLikelihood const known({readings.volts_reading(red, black)}, {emf + 0.2}, {e});
    VoltageOutlooks const outlooks(readings, known, network.terminals.size());
    auto const next = outlooks.of(red, black);
    CHECK(next.volts == doctest::Approx(emf + 0.2 * s * s / (s * s + e * e)));
    CHECK(next.spread == doctest::Approx(std::sqrt(s * s * e * e / (s * s + e * e))));
    auto const other = outlooks.of(node_of(network, "B+"), node_of(network, "B-"));
    CHECK(other.volts == doctest::Approx(12.6)); // another battery is none the wiser
    CHECK(other.spread == doctest::Approx(0.126));
}
