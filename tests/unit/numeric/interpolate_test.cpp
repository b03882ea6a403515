#include "bankwright/numeric/interpolate.hpp"

#include <array>
#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright::numeric;

namespace {
constexpr std::array<double, 5> x{0.0, 0.25, 0.5, 0.75, 1.0};
constexpr std::array<double, 5> y{11.8, 12.0, 12.4, 12.6, 12.8};
} // namespace

TEST_CASE("both interpolations pass through their points and hold beyond them") {
    for (std::size_t i = 0; i < x.size(); ++i) {
        CHECK(linear(x, y, x[i]) == y[i]);
        CHECK(monotone_cubic(x, y, x[i]) == doctest::Approx(y[i]).epsilon(1e-15));
    }
    CHECK(linear(x, y, -1.0) == 11.8);
    CHECK(monotone_cubic(x, y, 2.0) == 12.8);
    CHECK(linear(x, y, std::nan("")) == 11.8);
}

TEST_CASE("a straight line stays straight through the cubic") {
    std::array<double, 4> const at{0.0, 1.0, 4.0, 5.0};
    std::array<double, 4> const line{1.0, 3.0, 9.0, 11.0};
    for (double u = 0.0; u <= 5.0; u += 0.1)
        CHECK(monotone_cubic(at, line, u) == doctest::Approx(1.0 + 2.0 * u));
}

TEST_CASE("the cubic never overshoots a step") {
    std::array<double, 5> const step{0.0, 0.0, 1.0, 1.0, 1.0};
    double before = 0.0;
    for (double u = 0.0; u <= 1.0; u += 0.001) {
        auto const now = monotone_cubic(x, step, u);
        CHECK(now >= before);
        CHECK(now <= 1.0);
        before = now;
    }
}

TEST_CASE("two points are a line to the cubic") {
    std::array<double, 2> const at{1.0, 3.0};
    std::array<double, 2> const line{5.0, 9.0};
    CHECK(monotone_cubic(at, line, 2.0) == doctest::Approx(7.0));
}

TEST_CASE("the inverse finds where a rising function takes a value") {
    auto const cube = [](double u) { return u * u * u; };
    CHECK(inverse(cube, 8.0, 0.0, 10.0) == doctest::Approx(2.0).epsilon(1e-14));
    CHECK(inverse(cube, -1.0, 0.0, 10.0) == 0.0);
    CHECK(inverse(cube, 2000.0, 0.0, 10.0) == 10.0);
}
