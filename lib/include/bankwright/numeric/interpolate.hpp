// What lies between the points of a published table? Interpolation that never overshoots: straight, or by a cubic that
// is monotone where the points are. x must rise strictly; outside the points the end value holds.
#pragma once

#include <cmath>
#include <cstddef>
#include <span>

namespace bankwright::numeric {

// The interval of x that `at` lies in: i with x[i] <= at < x[i + 1], clamped to the intervals there are. O(size).
constexpr std::size_t interval(std::span<double const> x, double at) {
    std::size_t i = 0;
    while (i + 2 < x.size() && at >= x[i + 1])
        ++i;
    return i;
}

constexpr double linear(std::span<double const> x, std::span<double const> y, double at) {
    if (!(at > x.front())) return y.front();
    if (at >= x.back()) return y.back();
    auto const i = interval(x, at);
    return y[i] + (y[i + 1] - y[i]) * ((at - x[i]) / (x[i + 1] - x[i]));
}

// Slope at point i by the rule of Fritsch and Butland (1984): the weighted harmonic mean of the neighboring secants,
// zero where they differ in sign; at the ends a three-point formula, limited to keep the shape. As SciPy's
// PchipInterpolator. Needs at least two points.
inline double monotone_slope(std::span<double const> x, std::span<double const> y, std::size_t i) {
    auto const width = [&](std::size_t k) { return x[k + 1] - x[k]; };
    auto const secant = [&](std::size_t k) { return (y[k + 1] - y[k]) / width(k); };
    auto const last = x.size() - 1;
    if (last == 1) return secant(0);
    if (i == 0 || i == last) {
        auto const near = i == 0 ? 0 : last - 1;
        auto const far = i == 0 ? 1 : last - 2;
        auto const s = secant(near);
        auto const slope =
            ((2.0 * width(near) + width(far)) * s - width(near) * secant(far)) / (width(near) + width(far));
        if (slope * s <= 0.0) return 0.0;
        if (s * secant(far) <= 0.0 && std::abs(slope) > 3.0 * std::abs(s)) return 3.0 * s;
        return slope;
    }
    auto const before = secant(i - 1);
    auto const after = secant(i);
    if (before * after <= 0.0) return 0.0;
    auto const w1 = 2.0 * width(i) + width(i - 1);
    auto const w2 = width(i) + 2.0 * width(i - 1);
    return (w1 + w2) / (w1 / before + w2 / after);
}

inline double monotone_cubic(std::span<double const> x, std::span<double const> y, double at) {
    if (!(at > x.front())) return y.front();
    if (at >= x.back()) return y.back();
    auto const i = interval(x, at);
    auto const h = x[i + 1] - x[i];
    auto const t = (at - x[i]) / h;
    auto const slope_here = monotone_slope(x, y, i);
    auto const slope_next = monotone_slope(x, y, i + 1);
    auto const u = 1.0 - t;
    // The Hermite cubic, written so that a level piece stays level to the last digit.
    return y[i] + (y[i + 1] - y[i]) * t * t * (3.0 - 2.0 * t) + h * t * u * (slope_here * u - slope_next * t);
}

// Where a rising function takes a value: low or high if the value lies outside f(low)..f(high). Bisection, because what
// it inverts has corners; it ends when the bracket cannot shrink any more.
template <class Rising>
double inverse(Rising const& f, double value, double low, double high) {
    if (value <= f(low)) return low;
    if (value >= f(high)) return high;
    while (true) {
        auto const middle = 0.5 * (low + high);
        if (!(middle > low && middle < high)) return middle;
        (f(middle) < value ? low : high) = middle;
    }
}

} // namespace bankwright::numeric
