// How does one kernel run by whichever instructions were asked for?
//
// A kernel is written once, for registers of any width, and always inlined: it takes its instructions from the function
// that it is inlined into. There is one such function template an architecture.
#pragma once

#include "bankwright/solver/lanes.hpp"

#include <type_traits>
#include <utility>

namespace bankwright::solver {

namespace internal {

// How many doubles a register of the kernel holds.
template <int width>
using Width = std::integral_constant<int, width>;

// Numbers and pointers go in the processor's registers, all else by reference.
template <class T>
using Handed = std::conditional_t<std::is_scalar_v<std::remove_reference_t<T>>, std::remove_reference_t<T>, T>;

#if defined(__x86_64__)
template <class Kernel, class... A>
__attribute__((target("avx2,fma"))) inline auto on_avx2(A... with) {
    return Kernel{}(Width<4>{}, with...);
}
template <class Kernel, class... A>
__attribute__((target("avx512f,fma"))) inline auto on_avx512(A... with) {
    return Kernel{}(Width<8>{}, with...);
}
#endif

} // namespace internal

// What `kernel(Width<n>, with...)` gives. The kernel is a lambda that captures nothing and is always inlined. One that
// gains nothing from registers of eight names a lower `widest`.
template <int widest = 8, class Kernel, class... A>
auto run_by(InstructionSet set, Kernel const& kernel, A&&... with) {
#if defined(__x86_64__)
    if constexpr (widest == 8)
        if (set == InstructionSet::avx512)
            return internal::on_avx512<Kernel, internal::Handed<A&&>...>(std::forward<A>(with)...);
    if (set != InstructionSet::portable)
        return internal::on_avx2<Kernel, internal::Handed<A&&>...>(std::forward<A>(with)...);
#endif
    static_cast<void>(set);
    return kernel(internal::Width<2>{}, with...);
}

} // namespace bankwright::solver
