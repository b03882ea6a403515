// Bodies of curve_lanes.hpp: its one kernel with and without fused products.
#pragma once

#include "bankwright/solver/curve_lanes.hpp"
#include "bankwright/solver/lanes/run_by.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE bool run_curves(double const* rows, std::size_t stride, std::size_t count, std::size_t degree,
                                  double const* x, double* y, InstructionSet set) {
    return run_by<4>(
        set, [](auto width, auto&... with) __attribute__((always_inline)) { return CurveKernel<width>::run(with...); },
        rows, stride, count, degree, x, y);
}

} // namespace bankwright::solver
