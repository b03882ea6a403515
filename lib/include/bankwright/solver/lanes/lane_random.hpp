// Uniform random numbers for all lanes at once: xoshiro256+, one generator a lane.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/lanes.hpp"

#include <cstdint>

namespace bankwright::solver {

// Splitmix64: successive hashes of a counter.
struct SplitMix64 {
    std::uint64_t state;
    static std::uint64_t mix(std::uint64_t word);
    std::uint64_t next();
};

struct LaneGenerator {
    alignas(64) std::uint64_t state[4][lanes];
};

// A stream of its own for each (seed, number, lane).
LaneGenerator seeded(std::uint64_t seed, std::uint64_t number);

// One sampled row: where it goes in `rows`, low + width x u with u in [0, 1).
struct SampledRow {
    int offset = 0;
    double low = 0.0;
    double width = 0.0;
};

// Advances the generator once for each row.
void sample(LaneGenerator& generator, SampledRow const* sampled, int count, double* rows, InstructionSet set);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/lanes/lane_random_inl.hpp"
#endif
