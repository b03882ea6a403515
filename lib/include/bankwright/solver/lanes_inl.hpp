// Bodies of lanes.hpp.
#pragma once

#include "bankwright/solver/lanes.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE bool runs_here(InstructionSet set) {
#if defined(__x86_64__)
    // The kernels of AVX-512 use fused products, and some of their neighbors AVX2: a virtual machine may hide either.
    if (set == InstructionSet::avx512) return __builtin_cpu_supports("avx512f") != 0 && runs_here(InstructionSet::avx2);
    if (set == InstructionSet::avx2) return __builtin_cpu_supports("avx2") != 0 && __builtin_cpu_supports("fma") != 0;
#endif
    return set == InstructionSet::portable;
}

BANKWRIGHT_INLINE InstructionSet widest_here() {
    for (InstructionSet set : {InstructionSet::avx512, InstructionSet::avx2})
        if (runs_here(set)) return set;
    return InstructionSet::portable;
}

} // namespace bankwright::solver
