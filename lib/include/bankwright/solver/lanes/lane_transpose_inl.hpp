// Bodies of lane_transpose.hpp.
#pragma once

#include "bankwright/solver/lanes/lane_register.hpp"
#include "bankwright/solver/lanes/lane_transpose.hpp"
#include "bankwright/solver/lanes/run_by.hpp"

namespace bankwright::solver {

namespace internal {

// Square tiles of `width` x `width` values; the template's width is 2 or 4, whatever the instruction set: turning tiles
// of eight takes as long.
template <int width>
struct Transpose {
    using V = typename Register<width>::type;
    using Mask = decltype(V{} < V{});

    __attribute__((always_inline)) static V& at(double* p) { return *reinterpret_cast<V*>(p); }

    // Neither side of banks is aligned.
    __attribute__((always_inline)) static void read(double const* p, V& v) { __builtin_memcpy(&v, p, sizeof v); }
    __attribute__((always_inline)) static void write(double* p, V const& v) { __builtin_memcpy(p, &v, sizeof v); }

    __attribute__((always_inline)) static void turn(V* t) {
        if constexpr (width == 2) {
            V const a = t[0], b = t[1];
            t[0] = __builtin_shufflevector(a, b, 0, 2);
            t[1] = __builtin_shufflevector(a, b, 1, 3);
        } else {
            V const a = __builtin_shufflevector(t[0], t[1], 0, 4, 2, 6);
            V const b = __builtin_shufflevector(t[0], t[1], 1, 5, 3, 7);
            V const c = __builtin_shufflevector(t[2], t[3], 0, 4, 2, 6);
            V const d = __builtin_shufflevector(t[2], t[3], 1, 5, 3, 7);
            t[0] = __builtin_shufflevector(a, c, 0, 1, 4, 5);
            t[1] = __builtin_shufflevector(b, d, 0, 1, 4, 5);
            t[2] = __builtin_shufflevector(a, c, 2, 3, 6, 7);
            t[3] = __builtin_shufflevector(b, d, 2, 3, 6, 7);
        }
    }

    // `sound`: all ones while every value was what it must be.
    __attribute__((always_inline)) static void look(V const& v, bool must_be_positive, Mask& sound) {
        if (must_be_positive)
            sound &= (v >= 1e-75) & (v <= 1e75);
        else
            sound &= v - v == 0.0;
    }

    __attribute__((always_inline)) static bool to_rows(double const* const* banks, int count, int positive,
                                                       double* rows) {
        Mask sound = V{} == V{};
        int i = 0;
        for (; i + width <= count; i += width)
            for (int lane = 0; lane < lanes; lane += width) {
                V t[width];
#pragma GCC unroll 4
                for (int k = 0; k < width; ++k)
                    read(banks[lane + k] + i, t[k]);
                turn(t);
#pragma GCC unroll 4
                for (int k = 0; k < width; ++k)
                    at(rows + (i + k) * lanes + lane) = t[k];
                if (i + width <= positive)
#pragma GCC unroll 4
                    for (int k = 0; k < width; ++k)
                        look(t[k], true, sound);
                else
#pragma GCC unroll 4
                    for (int k = 0; k < width; ++k)
                        look(t[k], i + k < positive, sound);
            }
        for (; i < count; ++i) {
            for (int lane = 0; lane < lanes; ++lane)
                rows[i * lanes + lane] = banks[lane][i];
            for (int lane = 0; lane < lanes; lane += width)
                look(at(rows + i * lanes + lane), i < positive, sound);
        }
        bool all = true;
        for (int k = 0; k < width; ++k)
            all = all && sound[k];
        return all;
    }

    __attribute__((always_inline)) static void to_banks(double const* const* rows, int count, double* const* banks) {
        int i = 0;
        for (; i + width <= count; i += width)
            for (int lane = 0; lane < lanes; lane += width) {
                V t[width];
#pragma GCC unroll 4
                for (int k = 0; k < width; ++k)
                    read(rows[i + k] + lane, t[k]);
                turn(t);
#pragma GCC unroll 4
                for (int k = 0; k < width; ++k)
                    write(banks[lane + k] + i, t[k]);
            }
        for (; i < count; ++i)
            for (int lane = 0; lane < lanes; ++lane)
                banks[lane][i] = rows[i][lane];
    }
};

} // namespace internal

BANKWRIGHT_INLINE bool banks_to_rows(double const* const* banks, int count, int positive, double* rows,
                                     InstructionSet set) {
    return run_by<4>(
        set, [](auto width, auto&... with) __attribute__((always_inline)) {
            return internal::Transpose<width>::to_rows(with...);
        },
        banks, count, positive, rows);
}

BANKWRIGHT_INLINE void rows_to_banks(double const* const* rows, int count, double* const* banks, InstructionSet set) {
    return run_by<4>(
        set, [](auto width, auto&... with) __attribute__((always_inline)) {
            return internal::Transpose<width>::to_banks(with...);
        },
        rows, count, banks);
}

} // namespace bankwright::solver
