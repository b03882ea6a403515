// A curve that is asked very often: its pieces as coefficients, worked out once.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>
#include <vector>

namespace bankwright::numeric {

template <std::size_t degree>
struct PolynomialPiece {
    double from = 0.0, to = 0.0;                   // where it holds, `to` not included
    double origin = 0.0;                           // what the powers count from
    std::array<double, degree + 1> coefficients{}; // of 1, (x - origin), ...

    double at(double x) const {
        double sum = coefficients[degree];
        for (std::size_t k = degree; k-- > 0;)
            sum = sum * (x - origin) + coefficients[k];
        return sum;
    }
};

// The polynomial through f at places evenly spread over from..to: Newton's divided differences, multiplied out.
template <std::size_t degree, class F>
PolynomialPiece<degree> polynomial_through(F const& f, double from, double to) {
    PolynomialPiece<degree> piece{from, to, from, {}};
    std::array<double, degree + 1> x{}, difference{};
    for (std::size_t k = 0; k <= degree; ++k) {
        x[k] = (to - from) * static_cast<double>(k) / static_cast<double>(degree);
        difference[k] = f(k == degree ? to : from + x[k]);
    }
    for (std::size_t order = 1; order <= degree; ++order)
        for (std::size_t k = degree; k >= order; --k)
            difference[k] = (difference[k] - difference[k - 1]) / (x[k] - x[k - order]);
    auto& c = piece.coefficients;
    for (std::size_t k = degree + 1; k-- > 0;) { // c <- c (x - x[k]) + difference[k]
        for (std::size_t power = degree; power > 0; --power)
            c[power] = c[power - 1] - x[k] * c[power];
        c[0] = difference[k] - x[k] * c[0];
    }
    return piece;
}

template <std::size_t degree>
class PiecewisePolynomial {
public:
    // The same as f between the first and the last knot, but for rounding, where f is continuous and between two knots
    // a polynomial of no higher degree. Knots rise; of several that are alike one counts. At least two must differ.
    template <class F>
    PiecewisePolynomial(F const& f, std::vector<double> const& knots) {
        for (std::size_t k = 0; k + 1 < knots.size(); ++k)
            if (knots[k] < knots[k + 1]) pieces_.push_back(polynomial_through<degree>(f, knots[k], knots[k + 1]));
        pieces_.front().from = -std::numeric_limits<double>::infinity();
        pieces_.back().to = std::numeric_limits<double>::infinity();
    }

    // The first and the last go on beyond the ends.
    PolynomialPiece<degree> const& piece(double x) const {
        auto const next = std::upper_bound(pieces_.begin() + 1, pieces_.end(), x,
                                           [](double at, auto const& piece) { return at < piece.from; });
        return *(next - 1);
    }
    double at(double x) const { return piece(x).at(x); }
    std::vector<PolynomialPiece<degree>> const& pieces() const { return pieces_; }

private:
    std::vector<PolynomialPiece<degree>> pieces_;
};

} // namespace bankwright::numeric
