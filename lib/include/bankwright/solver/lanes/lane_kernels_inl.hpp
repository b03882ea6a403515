// Bodies of lane_kernels.hpp. One source for every instruction set: vectors of the compiler's own kind, kernels that
// are always inlined into an entry function which carries the target.
#pragma once

#include "bankwright/solver/lanes/lane_kernels.hpp"
#include "bankwright/solver/lanes/lane_register.hpp"
#include "bankwright/solver/lanes/run_by.hpp"

namespace bankwright::solver {

namespace internal {

template <int width>
struct LaneKernel {
    using V = typename Register<width>::type;

    __attribute__((always_inline)) static V& at(double* rows, int offset) {
        return *reinterpret_cast<V*>(rows + offset);
    }

    // Register by register. With AVX-512 there are two, which need no loop; but GCC would then compute what the kinds
    // of one pivot have in common before it looks at the kind, in the first register only, and round a product there
    // that the second adds unrounded. A bank's answer must not hang on the lane it stands in, so `rows` is hidden from
    // GCC.
    template <class Body>
    __attribute__((always_inline)) static void each(double* rows, int used, Body const& body) {
        if constexpr (2 * width == lanes) {
            __asm__("" : "+r"(rows));
            body(rows);
            if (used > width) body(rows + width);
        } else {
            for (double* r = rows; r < rows + used; r += width)
                body(r);
        }
    }

    // 1 / R of four resistances by one division, which costs as much as a dozen products.
    __attribute__((always_inline)) static void invert(LaneProgram const& program, double* rows, int used) {
        int const* op = program.reciprocals.data();
        int const* const end = op + program.reciprocals.size();
        for (; op != end; op += 8)
            each(
                rows, used, [&](double* r) __attribute__((always_inline)) {
                    V const a = at(r, op[0]), b = at(r, op[1]);
                    V const c = at(r, op[2]), d = at(r, op[3]);
                    V const ab = a * b, cd = c * d;
                    V const all = 1.0 / (ab * cd);
                    V const inverse_ab = all * cd, inverse_cd = all * ab;
                    at(r, op[4]) = inverse_ab * b;
                    at(r, op[5]) = inverse_ab * a;
                    at(r, op[6]) = inverse_cd * d;
                    at(r, op[7]) = inverse_cd * c;
                });
    }

    __attribute__((always_inline)) static void assemble(LaneProgram const& program, double* rows, int used) {
        invert(program, rows, used);
        int const* op = program.sums.data();
        for (int const* const end = op + program.sums.size(); op != end; op += 3)
            each(
                rows,
                used, [&](double* r) __attribute__((always_inline)) { at(r, op[2]) = at(r, op[1]) + at(r, op[0]); });
        op = program.sources.data();
        for (int const* const end = op + program.sources.size(); op != end; op += 6)
            each(
                rows, used, [&](double* r) __attribute__((always_inline)) {
                    V const amps = at(r, op[0]) * at(r, op[1]);
                    at(r, op[3]) = at(r, op[2]) - amps;
                    at(r, op[5]) = at(r, op[4]) + amps;
                });
        op = program.currents.data();
        for (int const* const end = op + program.currents.size(); op != end; op += 5)
            each(
                rows, used, [&](double* r) __attribute__((always_inline)) {
                    V const amps = at(r, op[0]);
                    at(r, op[2]) = at(r, op[1]) - amps;
                    at(r, op[4]) = at(r, op[3]) + amps;
                });
    }

    // One pivot of a degree known when this was compiled. Returns the next record.
    template <int degree, PivotKind kind>
    __attribute__((always_inline)) static int const* eliminate(int const* op, double* rows, int used) {
        constexpr int injected = kind == pivot_quiet ? 0 : kind == pivot_rooted ? degree - 1 : degree;
        int const first = op[1], injection = op[2], volts = op[3];
        int const* const neighbor = op + 4;
        int const* const pair = neighbor + 2 * injected;
        each(
            rows, used, [&](double* r) __attribute__((always_inline)) {
                V c[degree], l[degree];
                V s = c[0] = at(r, first);
#pragma GCC unroll 8
                for (int i = 1; i < degree; ++i)
                    s += c[i] = at(r, first + i * lanes);
                if constexpr (degree == 1) { // its whole injection goes on
                    if constexpr (kind != pivot_quiet) {
                        V const b = at(r, injection);
                        at(r, volts) = b / s;
                        if constexpr (injected == 1) at(r, neighbor[1]) = at(r, neighbor[0]) + b;
                    }
                    return;
                }
                V const inverse = 1.0 / s;
#pragma GCC unroll 8
                for (int i = 0; i < degree; ++i)
                    l[i] = c[i] * inverse; // first: at most 1, so nothing overflows
#pragma GCC unroll 8
                for (int i = 0; i < (kind == pivot_rooted ? degree - 1 : degree); ++i)
                    at(r, first + i * lanes) = l[i];
                if constexpr (kind != pivot_quiet) {
                    V const b = at(r, injection);
                    at(r, volts) = b * inverse;
#pragma GCC unroll 8
                    for (int i = 0; i < injected; ++i)
                        at(r, neighbor[2 * i + 1]) = at(r, neighbor[2 * i]) + l[i] * b;
                }
                int const* p = pair;
#pragma GCC unroll 8
                for (int i = 0; i < degree; ++i)
#pragma GCC unroll 8
                    for (int j = i + 1; j < degree; ++j, p += 2)
                        at(r, p[1]) = at(r, p[0]) + l[i] * c[j];
            });
        return pair + degree * (degree - 1);
    }

    // The same for any degree.
    __attribute__((always_inline)) static int const* eliminate_any(int const* op, double* rows, int used) {
        int const degree = op[0] / 3, kind = op[0] % 3;
        int const injected = kind == pivot_quiet ? 0 : kind == pivot_rooted ? degree - 1 : degree;
        int const first = op[1];
        int const* const neighbor = op + 4;
        int const* const pair = neighbor + 2 * injected;
        each(
            rows, used, [&](double* r) __attribute__((always_inline)) {
                V s = at(r, first);
                for (int i = 1; i < degree; ++i)
                    s += at(r, first + i * lanes);
                V const inverse = 1.0 / s;
                if (kind != pivot_quiet) {
                    V const b = at(r, op[2]);
                    at(r, op[3]) = b * inverse;
                    for (int i = 0; i < injected; ++i)
                        at(r, neighbor[2 * i + 1]) = at(r, neighbor[2 * i]) + at(r, first + i * lanes) * inverse * b;
                }
                int const* p = pair;
                for (int i = 0; i < degree; ++i) {
                    V const l = at(r, first + i * lanes) * inverse;
                    at(r, first + i * lanes) = l;
                    for (int j = i + 1; j < degree; ++j, p += 2)
                        at(r, p[1]) = at(r, p[0]) + l * at(r, first + j * lanes);
                }
            });
        return pair + degree * (degree - 1);
    }

    template <int degree>
    __attribute__((always_inline)) static int const* eliminate_kind(int const* op, double* rows, int used) {
        switch (op[0] - 3 * degree) {
        case pivot_plain:
            return eliminate<degree, pivot_plain>(op, rows, used);
        case pivot_rooted:
            return eliminate<degree, pivot_rooted>(op, rows, used);
        default:
            return eliminate<degree, pivot_quiet>(op, rows, used);
        }
    }

    __attribute__((always_inline)) static void forward(LaneProgram const& program, double* rows, int used) {
        assemble(program, rows, used);
        int const* op = program.forward.data();
        int const* const end = op + program.forward.size();
        while (op != end)
            switch (op[0] / 3) {
            case 1:
                op = eliminate_kind<1>(op, rows, used);
                break;
            case 2:
                op = eliminate_kind<2>(op, rows, used);
                break;
            case 3:
                op = eliminate_kind<3>(op, rows, used);
                break;
            case 4:
                op = eliminate_kind<4>(op, rows, used);
                break;
            case 5:
                op = eliminate_kind<5>(op, rows, used);
                break;
            case 6:
                op = eliminate_kind<6>(op, rows, used);
                break;
            default:
                op = eliminate_any(op, rows, used);
            }
    }

    template <int count>
    __attribute__((always_inline)) static int const* substitute(int const* op, double* rows, int used) {
        each(
            rows, used, [&](double* r) __attribute__((always_inline)) {
                V sum = at(r, op[2]);
#pragma GCC unroll 8
                for (int i = 1; i <= count; ++i) // from the far end: the youngest volts are waited for last
                    sum += at(r, op[1] + (count - i) * lanes) * at(r, op[4 + count - i]);
                at(r, op[3]) = sum;
            });
        return op + 4 + count;
    }

    __attribute__((always_inline)) static int const* substitute_any(int const* op, double* rows, int used) {
        each(
            rows, used, [&](double* r) __attribute__((always_inline)) {
                V sum = at(r, op[2]);
                for (int i = 0; i < op[0]; ++i)
                    sum += at(r, op[1] + i * lanes) * at(r, op[4 + i]);
                at(r, op[3]) = sum;
            });
        return op + 4 + op[0];
    }

    __attribute__((always_inline)) static void backward(LaneProgram const& program, double* rows, int used) {
        int const* op = program.backward.data();
        int const* const end = op + program.backward.size();
        while (op != end)
            switch (op[0]) {
            case -1: // a sole neighbor
                each(
                    rows, used, [&](double* r) __attribute__((always_inline)) {
                        at(r, op[3]) = at(r, op[2]) + at(r, op[4]);
                    });
                op += 5;
                break;
            case 1: // a sole neighbor is above, and of two one is no root
                op = substitute<1>(op, rows, used);
                break;
            case 2:
                op = substitute<2>(op, rows, used);
                break;
            case 3:
                op = substitute<3>(op, rows, used);
                break;
            case 4:
                op = substitute<4>(op, rows, used);
                break;
            case 5:
                op = substitute<5>(op, rows, used);
                break;
            default:
                op = substitute_any(op, rows, used);
            }
    }
};

} // namespace internal

BANKWRIGHT_INLINE void run_forward(LaneProgram const& program, double* rows, int used, InstructionSet set) {
    return run_by(
        set, [](auto width, auto&... with) __attribute__((always_inline)) {
            return internal::LaneKernel<width>::forward(with...);
        },
        program, rows, used);
}

BANKWRIGHT_INLINE void run_backward(LaneProgram const& program, double* rows, int used, InstructionSet set) {
    return run_by(
        set, [](auto width, auto&... with) __attribute__((always_inline)) {
            return internal::LaneKernel<width>::backward(with...);
        },
        program, rows, used);
}

} // namespace bankwright::solver
