// Bodies of lane_random.hpp.
#pragma once

#include "bankwright/solver/lane_random.hpp"
#include "bankwright/solver/lane_register.hpp"

namespace bankwright::solver {

template <int width>
struct RegisterOfBits;
template <>
struct RegisterOfBits<2> {
    typedef std::uint64_t type __attribute__((vector_size(16), may_alias));
};
template <>
struct RegisterOfBits<4> {
    typedef std::uint64_t type __attribute__((vector_size(32), may_alias));
};
template <>
struct RegisterOfBits<8> {
    typedef std::uint64_t type __attribute__((vector_size(64), may_alias));
};

BANKWRIGHT_INLINE std::uint64_t SplitMix64::mix(std::uint64_t word) {
    word = (word ^ (word >> 30)) * 0xbf58476d1ce4e5b9u;
    word = (word ^ (word >> 27)) * 0x94d049bb133111ebu;
    return word ^ (word >> 31);
}

BANKWRIGHT_INLINE std::uint64_t SplitMix64::next() { return mix(state += 0x9e3779b97f4a7c15u); }

BANKWRIGHT_INLINE LaneGenerator seeded(std::uint64_t seed, std::uint64_t number) {
    SplitMix64 walk{SplitMix64::mix(SplitMix64{seed}.next() ^ (number + 1) * 0xd1342543de82ef95u)};
    LaneGenerator generator;
    for (auto& row : generator.state)
        for (std::uint64_t& word : row)
            word = walk.next();
    return generator;
}

template <int width>
__attribute__((always_inline)) inline void draw_lanes(LaneGenerator& generator, DrawnRow const* drawn, int count,
                                                      double* rows) {
    using Bits = typename RegisterOfBits<width>::type;
    using V = typename Register<width>::type;
    for (int lane = 0; lane < lanes; lane += width) {
        Bits& first = reinterpret_cast<Bits&>(generator.state[0][lane]);
        Bits& second = reinterpret_cast<Bits&>(generator.state[1][lane]);
        Bits& third = reinterpret_cast<Bits&>(generator.state[2][lane]);
        Bits& fourth = reinterpret_cast<Bits&>(generator.state[3][lane]);
        Bits a = first, b = second, c = third, d = fourth;
        for (int i = 0; i < count; ++i) {
            // The top 52 bits make a number from 1 to 2.
            Bits const bits = ((a + d) >> 12) | 0x3ff0000000000000u;
            V const u = reinterpret_cast<V const&>(bits);
            *reinterpret_cast<V*>(rows + drawn[i].offset + lane) = (u - 1.0) * drawn[i].width + drawn[i].low;
            Bits const shifted = b << 17;
            c ^= a;
            d ^= b;
            b ^= c;
            a ^= d;
            c ^= shifted;
            d = (d << 45) | (d >> 19);
        }
        first = a, second = b, third = c, fourth = d;
    }
}

#if defined(__x86_64__)
__attribute__((target("avx2,fma"))) BANKWRIGHT_INLINE void draw_avx2(LaneGenerator& generator, DrawnRow const* drawn,
                                                                     int count, double* rows) {
    draw_lanes<4>(generator, drawn, count, rows);
}
__attribute__((target("avx512f"))) BANKWRIGHT_INLINE void draw_avx512(LaneGenerator& generator, DrawnRow const* drawn,
                                                                      int count, double* rows) {
    draw_lanes<8>(generator, drawn, count, rows);
}
#endif

BANKWRIGHT_INLINE void draw(LaneGenerator& generator, DrawnRow const* drawn, int count, double* rows,
                            InstructionSet set) {
#if defined(__x86_64__)
    if (set == InstructionSet::avx2) return draw_avx2(generator, drawn, count, rows);
    if (set == InstructionSet::avx512) return draw_avx512(generator, drawn, count, rows);
#endif
    static_cast<void>(set);
    draw_lanes<2>(generator, drawn, count, rows);
}

} // namespace bankwright::solver
