// Many curves side by side, each asked at its own place, again and again at places near the last: polynomials whose
// pieces are remembered, so that nothing is looked up while every place stays in its piece.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/numeric/piecewise_polynomial.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/lanes/lane_register.hpp"

#include <cstddef>
#include <limits>
#include <memory>

namespace bankwright::solver {

template <int width>
struct CurveKernel {
    using V = typename Register<width>::type;
    using Pair = Register<2>::type;

    // Read in pairs: whoever steps through time has stored them as pairs a moment ago, and a load of more would wait
    // for the cache.
    __attribute__((always_inline)) static void read(double const* x, V& places) {
        Pair const* const pairs = reinterpret_cast<Pair const*>(x);
        if constexpr (width == 2)
            places = *pairs;
        else
            places = __builtin_shufflevector(pairs[0], pairs[1], 0, 1, 2, 3);
    }

    template <class Mask>
    __attribute__((always_inline)) static bool all(Mask const& mask) {
        long long every = mask[0];
#pragma GCC unroll 4
        for (int lane = 1; lane < width; ++lane)
            every &= mask[lane];
        return every != 0;
    }

    // Of the first `count` curves. `rows` as CurveLanes lays them out: from, to, origin, coefficients. False: a place
    // lies outside its piece.
    __attribute__((always_inline)) static bool run(double const* rows, std::size_t stride, std::size_t count,
                                                   std::size_t degree, double const* x, double* y) {
        auto inside = V{} == V{}; // without a look at x: there may be no curve at all
        for (std::size_t i = 0; i < count; i += width) {
            auto const row = [&](std::size_t number) __attribute__((always_inline)) {
                return reinterpret_cast<V const*>(rows + number * stride + i);
            };
            auto const coefficient = [&](std::size_t power) __attribute__((always_inline)) { return row(3 + power); };
            V place;
            read(x + i, place);
            inside &= (place >= *row(0)) & (place < *row(1));
            V const from = place - *row(2), square = from * from;
            std::size_t k = degree / 2; // two powers at a time: half as many steps that wait for each other
            V sum = *coefficient(2 * k);
            if (degree % 2 == 1) sum += *coefficient(degree) * from;
            while (k-- > 0)
                sum = sum * square + (*coefficient(2 * k + 1) * from + *coefficient(2 * k));
            *reinterpret_cast<V*>(y + i) = sum;
        }
        return all(inside);
    }
};

bool run_curves(double const* rows, std::size_t stride, std::size_t count, std::size_t degree, double const* x,
                double* y, InstructionSet set);

template <std::size_t degree>
class CurveLanes {
public:
    using Piece = numeric::PolynomialPiece<degree>;

    // No piece is known at first.
    explicit CurveLanes(std::size_t count, InstructionSet set = widest_here())
        : count_(count), stride_(padded(count)), rows_((degree + 4) * stride_ / lanes), set_(set) {
        for (std::size_t i = 0; i < stride_; ++i) {
            row(0)[i] = i < count ? std::numeric_limits<double>::infinity() : -std::numeric_limits<double>::infinity();
            row(1)[i] = std::numeric_limits<double>::infinity();
        }
    }

    // y[i] at x[i]; both hold padded(count) numbers, of x those beyond `count` finite, and lie as LaneRows does.
    // `piece_of(i, x)` is asked for the piece in which x lies where that is no longer the last one.
    template <class PieceOf>
    void at(double const* x, double* y, PieceOf const& piece_of) {
        if (run_curves(rows_.data(), stride_, count_, degree, x, y, set_)) return;
        for (std::size_t i = 0; i < count_; ++i)
            if (!(x[i] >= row(0)[i] && x[i] < row(1)[i])) put(i, piece_of(i, x[i]));
        run_curves(rows_.data(), stride_, count_, degree, x, y, set_);
    }

private:
    double* row(std::size_t k) { return rows_.data() + k * stride_; }
    void put(std::size_t i, Piece const& piece) {
        row(0)[i] = piece.from;
        row(1)[i] = piece.to;
        row(2)[i] = piece.origin;
        for (std::size_t k = 0; k <= degree; ++k)
            row(3 + k)[i] = piece.coefficients[k];
    }

    std::size_t count_, stride_;
    LaneRows rows_;
    InstructionSet set_;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/curve_lanes_inl.hpp"
#endif
