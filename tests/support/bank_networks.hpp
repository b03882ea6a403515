// Invented banks as circuits, for batches of them: strings of batteries with a link between neighboring posts at every
// rank.
#pragma once

#include "bankwright/solver/circuit.hpp"
#include "support/random_circuits.hpp"

namespace bank_networks {

using bankwright::solver::Branch;
using bankwright::solver::Circuit;

// `series` x `parallel` batteries of 12 V. Posts of a rank are linked to their neighbors, each string has its jumper
// to the next rank; the plus lead is cable, breaker, cable, the minus lead two cables. The load's minus end is the
// reference.
inline Circuit bank(int series, int parallel) {
    Circuit c;
    auto const minus = [&](int rank, int string) { return 2 * (rank * parallel + string); };
    auto const plus = [&](int rank, int string) { return minus(rank, string) + 1; };
    for (int rank = 0; rank < series; ++rank)
        for (int string = 0; string < parallel; ++string)
            c.branches.push_back({minus(rank, string), plus(rank, string), 0.005, 12.6});
    for (int rank = 0; rank < series; ++rank)
        for (int string = 0; string + 1 < parallel; ++string) {
            c.branches.push_back({plus(rank, string), plus(rank, string + 1), 0.0004, 0.0});
            c.branches.push_back({minus(rank, string), minus(rank, string + 1), 0.0004, 0.0});
        }
    for (int rank = 0; rank + 1 < series; ++rank)
        for (int string = 0; string < parallel; ++string)
            c.branches.push_back({plus(rank, string), minus(rank + 1, string), 0.0003, 0.0});
    int const posts = 2 * series * parallel;
    c.nodes = posts + 5;
    c.reference = posts + 4;
    c.branches.push_back({plus(series - 1, 0), posts, 0.002, 0.0});
    c.branches.push_back({posts, posts + 1, 0.0005, 0.0});
    c.branches.push_back({posts + 1, posts + 2, 0.004, 0.0});
    c.branches.push_back({minus(0, parallel - 1), posts + 3, 0.003, 0.0});
    c.branches.push_back({posts + 3, posts + 4, 0.003, 0.0});
    c.loads.push_back({posts + 2, posts + 4, bankwright::solver::ConstantCurrent{100.0}});
    return c;
}

// Every number drawn anew: resistances by a factor of up to 2 either way, emfs 11.5 to 13 V, currents 20 to 200 A.
inline Circuit drawn(Circuit c, random_circuits::Dice& dice) {
    for (Branch& b : c.branches) {
        b.resistance *= dice.log_between(0.5, 2.0);
        if (b.emf != 0.0) b.emf = dice.between(11.5, 13.0);
    }
    for (auto& l : c.loads)
        l.law = bankwright::solver::ConstantCurrent{dice.between(20.0, 200.0)};
    return c;
}

} // namespace bank_networks
