#include "bankwright/numeric/dormand_prince.hpp"

#include <array>
#include <cmath>

#include <doctest/doctest.h>

namespace rule = bankwright::numeric::dormand_prince;

namespace {

struct Step {
    double end = 0.0, error = 0.0;
    std::array<double, rule::slopes> slopes{};
    double inside(double start, double h, double part) const {
        double y = start;
        for (std::size_t k = 0; k < rule::slopes; ++k)
            y += h * rule::inside(part)[k] * slopes[k];
        return y;
    }
};

// Of y' = f(t, y) from t on.
template <class F>
Step step(F const& f, double t, double y, double h) {
    Step s;
    for (std::size_t k = 0; k < rule::slopes; ++k) {
        double at = t;
        s.end = y;
        for (std::size_t j = 0; j < k; ++j) {
            at += h * rule::to_slope[k][j];
            s.end += h * rule::to_slope[k][j] * s.slopes[j];
        }
        s.slopes[k] = f(at, s.end);
    }
    for (std::size_t k = 0; k < rule::slopes; ++k)
        s.error += h * rule::error[k] * s.slopes[k];
    return s;
}

} // namespace

TEST_CASE("a step is exact for what the fifth order holds, and its inside for the fourth") {
    for (int power = 0; power <= 4; ++power) {
        auto const s = step([&](double t, double) { return std::pow(t, power); }, 1.0, 0.0, 2.0);
        auto const integral = [&](double to) { return (std::pow(to, power + 1) - 1.0) / (power + 1); };
        CAPTURE(power);
        CHECK(s.end == doctest::Approx(integral(3.0)).epsilon(1e-14));
        if (power == 4) continue;
        CHECK(std::abs(s.error) < 1e-13);
        for (double part : {0.25, 0.5, 0.9})
            CHECK(s.inside(0.0, 2.0, part) == doctest::Approx(integral(1.0 + 2.0 * part)).epsilon(1e-13));
    }
}

TEST_CASE("half the step leaves a sixty-fourth of what it is wrong by, a thirty-second inside") {
    auto const wrong = [](double h) {
        auto const s = step([](double, double y) { return y; }, 0.0, 1.0, h);
        return std::array{std::abs(s.end - std::exp(h)), std::abs(s.inside(1.0, h, 0.4) - std::exp(0.4 * h)),
                          std::abs(s.error)};
    };
    auto const whole = wrong(0.05), half = wrong(0.025);
    CHECK(whole[0] / half[0] == doctest::Approx(64.0).epsilon(0.1));
    CHECK(whole[1] / half[1] == doctest::Approx(32.0).epsilon(0.1));
    CHECK(whole[2] / half[2] == doctest::Approx(32.0).epsilon(0.1));
}

TEST_CASE("the inside begins where the step does and ends where it ends") {
    for (std::size_t k = 0; k < rule::slopes; ++k) {
        CHECK(rule::inside(0.0)[k] == 0.0);
        CHECK(rule::inside(1.0)[k] == doctest::Approx(rule::to_slope.back()[k]).epsilon(1e-12));
    }
}
