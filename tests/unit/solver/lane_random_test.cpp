#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/lanes/lane_random.hpp"

#include <cstdint>
#include <vector>

#include <doctest/doctest.h>

namespace solver = bankwright::solver;

// Splitmix64 from 1234567, as the task "Pseudo-random numbers/Splitmix64" of Rosetta Code prints it; [read] in the
// tests of other implementations that cite it.
TEST_CASE("the counter is hashed as splitmix64 does it") {
    solver::SplitMix64 walk{1234567};
    for (std::uint64_t const word : {6457827717110365317u, 3203168211198807973u, 9817491932198370423u,
                                     4593380528125082431u, 16408922859458223821u})
        CHECK(walk.next() == word);
}

// The first numbers of the authors' xoshiro256plus.c from the state 1, 2, 3, 4; [read] in the tests of two other
// implementations.
TEST_CASE("every lane draws what xoshiro256+ draws, in each instruction set of this machine") {
    std::vector<std::uint64_t> const words{5u,
                                           211106232532999u,
                                           211106635186183u,
                                           9223759065350669058u,
                                           9250833439874351877u,
                                           13862484359527728515u,
                                           2346507365006083650u,
                                           1168864526675804870u,
                                           34095955243042024u,
                                           3466914240207415127u};
    constexpr auto lanes = static_cast<std::size_t>(solver::lanes);
    for (auto const set :
         {solver::InstructionSet::portable, solver::InstructionSet::avx2, solver::InstructionSet::avx512}) {
        if (!solver::runs_here(set)) continue;
        solver::LaneGenerator generator;
        for (std::uint64_t row = 0; row < 4; ++row)
            for (std::uint64_t& word : generator.state[row])
                word = row + 1;
        solver::LaneRows rows(words.size());
        std::vector<solver::SampledRow> sampled;
        for (std::size_t i = 0; i < words.size(); ++i)
            sampled.push_back({static_cast<int>(i * lanes), 2.0, 8.0});
        solver::sample(generator, sampled.data(), static_cast<int>(sampled.size()), rows.data(), set);
        for (std::size_t i = 0; i < words.size(); ++i)
            for (std::size_t lane = 0; lane < lanes; ++lane)
                CHECK(rows.row(static_cast<int>(i))[lane] ==
                      2.0 + 8.0 * (static_cast<double>(words[i] >> 12) * 0x1p-52)); // exact but for the sum
    }
}

TEST_CASE("a seed, a number and a lane each give another stream") {
    auto const first = solver::seeded(1, 0), again = solver::seeded(1, 0);
    CHECK(first.state[0][0] == again.state[0][0]);
    CHECK(first.state[0][0] != first.state[0][1]);
    CHECK(first.state[0][0] != solver::seeded(1, 1).state[0][0]);
    CHECK(first.state[0][0] != solver::seeded(2, 0).state[0][0]);
}
