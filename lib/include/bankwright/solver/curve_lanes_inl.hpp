// Bodies of curve_lanes.hpp: its one kernel with and without fused products.
#pragma once

#include "bankwright/solver/curve_lanes.hpp"

namespace bankwright::solver {

#if defined(__x86_64__)
__attribute__((target("avx2,fma"))) BANKWRIGHT_INLINE bool curves_fused(double const* rows, std::size_t stride,
                                                                        std::size_t count, std::size_t degree,
                                                                        double const* x, double* y) {
    return CurveKernel<4>::run(rows, stride, count, degree, x, y);
}
#endif

BANKWRIGHT_INLINE bool run_curves(double const* rows, std::size_t stride, std::size_t count, std::size_t degree,
                                  double const* x, double* y, InstructionSet set) {
#if defined(__x86_64__)
    if (set != InstructionSet::portable) return curves_fused(rows, stride, count, degree, x, y);
#endif
    static_cast<void>(set);
    return CurveKernel<2>::run(rows, stride, count, degree, x, y);
}

} // namespace bankwright::solver
