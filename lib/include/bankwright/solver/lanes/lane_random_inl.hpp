// Bodies of lane_random.hpp.
#pragma once

#include "bankwright/solver/lanes/lane_random.hpp"
#include "bankwright/solver/lanes/lane_register.hpp"
#include "bankwright/solver/lanes/run_by.hpp"

namespace bankwright::solver {

namespace internal {

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

} // namespace internal

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

namespace internal {

// Two registers of lanes at a time: each number waits for the one before it.
template <int width>
__attribute__((always_inline)) inline void sample_lanes(LaneGenerator& generator, SampledRow const* sampled, int count,
                                                        double* rows) {
    using Bits = typename RegisterOfBits<width>::type;
    using V = typename Register<width>::type;
    static_assert(lanes % (2 * width) == 0);
    for (int lane = 0; lane < lanes; lane += 2 * width) {
        Bits a[2], b[2], c[2], d[2];
        auto* const states = reinterpret_cast<Bits*>(&generator.state[0][lane]);
        constexpr int apart = lanes / width; // registers
#pragma GCC unroll 2
        for (int k = 0; k < 2; ++k) {
            a[k] = states[k];
            b[k] = states[apart + k];
            c[k] = states[2 * apart + k];
            d[k] = states[3 * apart + k];
        }
        for (int i = 0; i < count; ++i) {
            double* const row = rows + sampled[i].offset + lane;
            double const low = sampled[i].low, wide = sampled[i].width;
#pragma GCC unroll 2
            for (int k = 0; k < 2; ++k) {
                // The top 52 bits make a number from 1 to 2.
                Bits const bits = ((a[k] + d[k]) >> 12) | 0x3ff0000000000000u;
                V const u = reinterpret_cast<V const&>(bits);
                *reinterpret_cast<V*>(row + k * width) = (u - 1.0) * wide + low;
                Bits const shifted = b[k] << 17;
                c[k] ^= a[k];
                d[k] ^= b[k];
                b[k] ^= c[k];
                a[k] ^= d[k];
                c[k] ^= shifted;
                d[k] = (d[k] << 45) | (d[k] >> 19);
            }
        }
#pragma GCC unroll 2
        for (int k = 0; k < 2; ++k) {
            states[k] = a[k];
            states[apart + k] = b[k];
            states[2 * apart + k] = c[k];
            states[3 * apart + k] = d[k];
        }
    }
}

} // namespace internal

BANKWRIGHT_INLINE void sample(LaneGenerator& generator, SampledRow const* sampled, int count, double* rows,
                              InstructionSet set) {
    return run_by(
        set,
        [](auto width, auto&... with) __attribute__((always_inline)) { return internal::sample_lanes<width>(with...); },
        generator, sampled, count, rows);
}

} // namespace bankwright::solver
