// Bodies of column_sums.hpp: one kernel for every instruction set.
#pragma once

#include "bankwright/solver/column_sums.hpp"
#include "bankwright/solver/lanes/lane_register.hpp"
#include "bankwright/solver/lanes/run_by.hpp"

#include <cstddef>
#include <cstring>

namespace bankwright::solver {

namespace internal {

template <int width>
struct ColumnKernel {
    using V = typename Register<width>::type;
    static constexpr int registers = lanes / width;

    // Of one row of lanes: the first column + factor by factor the next ones.
    __attribute__((always_inline)) static void sum_row(double const* column, std::size_t stride, double const* factors,
                                                       std::size_t count, V (&total)[registers]) {
        constexpr std::size_t chains = width > 2 ? 2 : 1; // hides the latency of an addition
        V second[registers] = {};
#pragma GCC unroll 8
        for (int r = 0; r < registers; ++r)
            total[r] = *reinterpret_cast<V const*>(column + r * width);
        std::size_t k = 0;
        for (; k + chains <= count; k += chains)
#pragma GCC unroll 2
            for (std::size_t chain = 0; chain < chains; ++chain) {
                column += stride;
#pragma GCC unroll 8
                for (int r = 0; r < registers; ++r)
                    (chain == 0 ? total : second)[r] +=
                        factors[k + chain] * *reinterpret_cast<V const*>(column + r * width);
            }
        for (; k < count; ++k) {
            column += stride;
#pragma GCC unroll 8
            for (int r = 0; r < registers; ++r)
                total[r] += factors[k] * *reinterpret_cast<V const*>(column + r * width);
        }
#pragma GCC unroll 8
        for (int r = 0; r < registers; ++r)
            if constexpr (chains == 2) total[r] += second[r];
    }

    // sums = the first column + factor by factor the next ones.
    __attribute__((always_inline)) static void sum(double const* columns, std::size_t stride, double const* factors,
                                                   std::size_t count, double* sums) {
        for (std::size_t first = 0; first < stride; first += lanes) {
            V total[registers];
            sum_row(columns + first, stride, factors, count, total);
#pragma GCC unroll 8
            for (int r = 0; r < registers; ++r)
                *reinterpret_cast<V*>(sums + first + r * width) = total[r];
        }
    }

    // The first `count` numbers of a register: all of it, or its lower half and what remains of the upper, and so on.
    // Whoever loads them next in pairs finds each pair whole in the store buffer, and need not wait for the cache.
    __attribute__((always_inline)) static void put(V const& from, double* to, std::size_t count) {
        if (count >= width) {
            std::memcpy(to, &from, sizeof from);
        } else if constexpr (width == 2) {
            if (count == 1) to[0] = from[0];
        } else {
            using Half = ColumnKernel<width / 2>;
            constexpr std::size_t half = width / 2;
            if constexpr (width == 8) {
                Half::put(__builtin_shufflevector(from, from, 0, 1, 2, 3), to, count);
                if (count > half) Half::put(__builtin_shufflevector(from, from, 4, 5, 6, 7), to + half, count - half);
            } else {
                Half::put(__builtin_shufflevector(from, from, 0, 1), to, count);
                if (count > half) Half::put(__builtin_shufflevector(from, from, 2, 3), to + half, count - half);
            }
        }
    }

    // answer = sums + factor by factor the columns, of the first `values`.
    __attribute__((always_inline)) static void add(double const* columns, std::size_t stride, double const* factors,
                                                   std::size_t count, double const* sums, double* answer,
                                                   std::size_t values) {
        for (std::size_t i = 0; i < values; i += width) {
            V total = *reinterpret_cast<V const*>(sums + i);
            for (std::size_t k = 0; k < count; ++k)
                total += factors[k] * *reinterpret_cast<V const*>(columns + k * stride + i);
            put(total, answer + i, values - i);
        }
    }

    // from + the products: a sum that is waited for, so in short chains, and from pairs, as they were stored.
    __attribute__((always_inline)) static double product(double from, double const* row, double const* factors,
                                                         std::size_t count) {
        using Pair = Register<2>::type;
        Pair even{from, 0.0}, odd{};
        std::size_t k = 0;
        for (; k + 4 <= count; k += 4) {
            Pair factor[2];
            std::memcpy(factor, factors + k, sizeof factor);
            even += factor[0] * *reinterpret_cast<Pair const*>(row + k);
            odd += factor[1] * *reinterpret_cast<Pair const*>(row + k + 2);
        }
        Pair const both = even + odd;
        double sum = both[0] + both[1];
        for (; k < count; ++k)
            sum += factors[k] * row[k];
        return sum;
    }

    // What sum() and add() give together for one port of constant power, whose row is `values` and whose column is the
    // last. Its open volts first and by themselves, so that the other sums are made while the root is waited for.
    __attribute__((always_inline)) static double behind_power(double const* columns, std::size_t stride,
                                                              double const* factors, std::size_t count,
                                                              std::size_t values, PowerPort& port,
                                                              double const* open_volts, double* answer) {
        double const amps = port.amps(product(columns[values] - port.foreseen(), open_volts, factors, count));
        double const* const pulled = columns + (1 + count) * stride;
        for (std::size_t first = 0; first < values; first += lanes) {
            V total[registers];
            sum_row(columns + first, stride, factors, count, total);
            std::size_t i = first;
#pragma GCC unroll 8
            for (int r = 0; r < registers; ++r, i += width)
                if (i < values) put(total[r] + amps * *reinterpret_cast<V const*>(pulled + i), answer + i, values - i);
        }
        return amps;
    }
};

} // namespace internal

BANKWRIGHT_INLINE void sum_columns(double const* columns, std::size_t stride, double const* factors, std::size_t count,
                                   double* sums, InstructionSet set) {
    return run_by(
        set, [](auto width, auto&... with) __attribute__((always_inline)) {
            return internal::ColumnKernel<width>::sum(with...);
        },
        columns, stride, factors, count, sums);
}

BANKWRIGHT_INLINE void add_columns(double const* columns, std::size_t stride, double const* factors, std::size_t count,
                                   double const* sums, double* answer, std::size_t values, InstructionSet set) {
    return run_by(
        set, [](auto width, auto&... with) __attribute__((always_inline)) {
            return internal::ColumnKernel<width>::add(with...);
        },
        columns, stride, factors, count, sums, answer, values);
}

BANKWRIGHT_INLINE double columns_behind_power(double const* columns, std::size_t stride, double const* factors,
                                              std::size_t count, std::size_t values, PowerPort& port,
                                              double const* open_volts, double* answer, InstructionSet set) {
    return run_by(
        set, [](auto width, auto&... with) __attribute__((always_inline)) {
            return internal::ColumnKernel<width>::behind_power(with...);
        },
        columns, stride, factors, count, values, port, open_volts, answer);
}

} // namespace bankwright::solver
