// Several doubles in one register, of the compiler's own kind (GCC and Clang), so that one source serves every
// instruction set.
#pragma once

namespace bankwright::solver {

template <int width>
struct Register;
template <>
struct Register<2> {
    typedef double type __attribute__((vector_size(16), may_alias));
};
template <>
struct Register<4> {
    typedef double type __attribute__((vector_size(32), may_alias));
};
template <>
struct Register<8> {
    typedef double type __attribute__((vector_size(64), may_alias));
};

} // namespace bankwright::solver
