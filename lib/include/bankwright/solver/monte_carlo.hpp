// How far do the answers spread when every part lies within its tolerance? Values are sampled and statistics gathered
// inside the block: neither is ever written to memory, which does not grow with the number of samples.
//
// Random numbers: xoshiro256+ (Blackman and Vigna, Scrambled Linear Pseudorandom Number Generators, 2018 [from
// memory]), one generator a lane, seeded anew for each block from the seed and the block's number by splitmix64. The
// same seed gives the same samples on any number of threads.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/gauge.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace bankwright::solver {

// A parameter is sampled evenly from its center x (1 - relative) to center x (1 + relative).
struct Spread {
    std::vector<double> center;   // by parameter
    std::vector<double> relative; // by parameter, 0 to below 1
};

struct Statistics {
    std::size_t count = 0; // samples that have an answer
    double mean = 0.0;
    double deviation = 0.0; // standard deviation of the samples
    double least = 0.0, most = 0.0;
};

struct MonteCarloOptions {
    std::uint64_t seed = 1;
    int threads = 1; // the result does not depend on it
    InstructionSet set = widest_here();
};

// Statistics of each gauge over `samples` banks; a gauge's nodes, or its branch's two, must be wanted. A sample without
// an answer (Block::solve) is left out of them. Throws std::invalid_argument if the spread does not fit the plan, a
// center of a resistance is not positive, a tolerance takes a load's number out of its law, or a gauge is not in the
// circuit.
std::vector<Statistics> monte_carlo(BatchPlan const& plan, Spread const& spread, std::vector<Gauge> const& gauges,
                                    std::size_t samples, MonteCarloOptions const& options = {});

// The banks of block `number` (lanes of them), row by row as solve_rows takes them: what monte_carlo() samples.
std::vector<double> sampled_banks(BatchPlan const& plan, Spread const& spread, std::uint64_t seed, std::size_t number,
                                  InstructionSet set = widest_here());

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/monte_carlo_inl.hpp"
#endif
