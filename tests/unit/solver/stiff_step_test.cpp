#include "bankwright/solver/stiff_step.hpp"

#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

// x' = -x, y' = rate (cos x - y), and a flow y: x = exp(-t), and y follows cos x, after a while of 1 / rate.
struct Ended {
    double x = 0.0, y = 0.0, flowed = 0.0;
};
Ended by_steps(double rate, double h, int steps) {
    StiffStep step(
        2, 1,
        [&](double const* v, double* slopes) {
            slopes[0] = -v[0];
            slopes[1] = rate * (std::cos(v[0]) - v[1]);
            slopes[2] = v[1];
            return true;
        },
        [&](double const* v, double* columns) {
            columns[0] = -1.0, columns[1] = -rate * std::sin(v[0]), columns[2] = 0.0;
            columns[3] = 0.0, columns[4] = -rate, columns[5] = 1.0;
            return true;
        });
    Ended at{1.0, std::cos(1.0), 0.0};
    for (int i = 0; i < steps; ++i) {
        double const values[]{at.x, at.y};
        REQUIRE(step.start(values));
        REQUIRE(step.go(h));
        at = {step.end()[0], step.end()[1], at.flowed + step.end()[2]};
    }
    return at;
}

} // namespace

// A rule of the fourth order errs a sixteenth as much with half the step (Hairer and Wanner, Solving ODEs II, IV.7).
TEST_CASE("half the step is a sixteenth of the error") {
    auto const exact = std::exp(-0.5);
    auto const coarse = by_steps(1.0, 0.1, 5).x - exact, fine = by_steps(1.0, 0.05, 10).x - exact;
    CHECK(std::abs(fine) < 1e-8);
    CHECK(coarse / fine == doctest::Approx(16.0).epsilon(0.1));
}

TEST_CASE("a value that settles a million times faster than the others move follows them in long steps") {
    auto const end = by_steps(1e6, 0.05, 10);
    CHECK(end.x == doctest::Approx(std::exp(-0.5)).epsilon(1e-8));
    CHECK(end.y == doctest::Approx(std::cos(end.x)).epsilon(1e-6));
    // The integral of cos(exp(-t)) over 0..0.5, by Simpson's rule.
    double sum = 0.0;
    constexpr int pieces = 100;
    for (int i = 0; i <= pieces; ++i)
        sum += (i % pieces == 0 ? 1.0 : i % 2 == 1 ? 4.0 : 2.0) * std::cos(std::exp(-0.5 * i / pieces));
    CHECK(end.flowed == doctest::Approx(sum * 0.5 / pieces / 3.0).epsilon(1e-6));
}

TEST_CASE("a step to where there are no slopes says so") {
    StiffStep step(
        1, 0, [](double const* v, double* slopes) { return slopes[0] = 1.0, v[0] < 0.5; },
        [](double const*, double* columns) { return columns[0] = 0.0, true; });
    double const start = 0.0;
    REQUIRE(step.start(&start));
    CHECK(step.go(0.1));
    CHECK_FALSE(step.go(10.0));
    CHECK(step.go(0.1)); // from the same start
    CHECK(step.end()[0] == doctest::Approx(0.1));
}
