#include "bankwright/solver/curve_lanes.hpp"

#include <cmath>
#include <type_traits>

#include <doctest/doctest.h>

using namespace bankwright;
using solver::CurveLanes;
using solver::InstructionSet;

namespace {

double cubic(double x) { return 1.0 + x * (2.0 + x * (-3.0 + x * 0.5)); }
double bent(double x) { return x < 0.5 ? cubic(x) : cubic(0.5) + 7.0 * (x - 0.5); }

} // namespace

TEST_CASE_TEMPLATE("curves side by side are each at its own place, whatever the instructions are", Degree,
                   std::integral_constant<std::size_t, 3>, std::integral_constant<std::size_t, 4>) {
    numeric::PiecewisePolynomial<Degree::value> const curve(bent, {0.0, 0.1, 0.5, 0.5, 1.0});
    for (auto const set : {InstructionSet::portable, InstructionSet::avx2, InstructionSet::avx512}) {
        if (!runs_here(set)) continue;
        constexpr std::size_t count = 19; // more than one row of lanes
        CurveLanes<Degree::value> lanes(count, set);
        solver::LaneRows x(2), y(2);
        int asked = 0;
        for (int moment = 0; moment < 50; ++moment) {
            for (std::size_t i = 0; i < count; ++i)
                x.data()[i] = 0.5 + 0.5 * std::sin(0.1 * moment + static_cast<double>(i));
            lanes.at(x.data(), y.data(), [&](std::size_t, double at) {
                ++asked;
                return curve.piece(at);
            });
            for (std::size_t i = 0; i < count; ++i)
                CHECK(y.data()[i] == doctest::Approx(bent(x.data()[i])).epsilon(1e-13));
        }
        CHECK(asked < 200); // of 950: a piece is asked for only where it is another
    }
}

TEST_CASE("a place that is no number gives no number, and its neighbors theirs") {
    numeric::PiecewisePolynomial<4> const curve(bent, {0.0, 0.5, 1.0});
    CurveLanes<4> lanes(2);
    solver::LaneRows x(1), y(1);
    x.data()[0] = std::nan("");
    x.data()[1] = 0.75;
    lanes.at(x.data(), y.data(), [&](std::size_t, double at) { return curve.piece(at); });
    CHECK(std::isnan(y.data()[0]));
    CHECK(y.data()[1] == doctest::Approx(bent(0.75)));
}

TEST_CASE("no curves at all are answered without a look at what is not there") { // a bank without batteries
    solver::LaneRows const x(0);
    solver::LaneRows y(0);
    CurveLanes<4> lanes(0);
    int asked = 0;
    lanes.at(x.data(), y.data(), [&](std::size_t, double) {
        ++asked;
        return CurveLanes<4>::Piece();
    });
    CHECK(asked == 0);
}
