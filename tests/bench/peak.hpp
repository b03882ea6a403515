// How many fused multiply-adds can this processor do in a second?
#pragma once

#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/lanes/lane_register.hpp"

namespace bench {

// Twelve independent chains keep every multiplier busy.
template <int width>
__attribute__((always_inline)) inline double multiply_add(long rounds) {
    using V = typename bankwright::solver::Register<width>::type;
    V sum[12];
    for (int i = 0; i < 12; ++i)
        sum[i] = V{} + static_cast<double>(i);
    V const factor = V{} + 0.999, term = V{} + 0.1;
    for (long k = 0; k < rounds; ++k)
#pragma GCC unroll 12
        for (int i = 0; i < 12; ++i)
            sum[i] = sum[i] * factor + term;
    double all = 0.0;
    for (int i = 0; i < 12; ++i)
        all += sum[i][0];
    return all;
}

#if defined(__x86_64__)
__attribute__((target("avx2,fma"), noinline)) inline double multiply_add_avx2(long rounds) {
    return multiply_add<4>(rounds);
}
__attribute__((target("avx512f"), noinline)) inline double multiply_add_avx512(long rounds) {
    return multiply_add<8>(rounds);
}
#endif

// Does `rounds` rounds; returns their number of floating-point operations, `sink` keeps them from being left out.
inline double run_peak(bankwright::solver::InstructionSet set, long rounds, double& sink) {
    double const each = 12.0 * 2.0 * static_cast<double>(rounds);
#if defined(__x86_64__)
    if (set == bankwright::solver::InstructionSet::avx512) return sink += multiply_add_avx512(rounds), 8.0 * each;
    if (set == bankwright::solver::InstructionSet::avx2) return sink += multiply_add_avx2(rounds), 4.0 * each;
#endif
    static_cast<void>(set);
    return sink += multiply_add<2>(rounds), 2.0 * each;
}

} // namespace bench
