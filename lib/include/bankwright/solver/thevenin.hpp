// What source does a circuit amount to as seen from a pair of its nodes, or from several pairs at once? Thevenin's
// theorem: an open voltage behind a resistance, V = V0 - Z I for currents I drawn from the pairs.
//
// V0 is what the pairs have at the operating point, all loads of the circuit included. Z is how they give way from
// there, the loads following along the tangents of their laws or holding their currents (small_signal.hpp): exact for
// any I in a circuit of resistances, emfs and constant currents, for small I in any other.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/small_signal.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/solve.hpp"

#include <vector>

namespace bankwright::solver {

struct TheveninSource {
    Status status = Status::bad_circuit;
    std::vector<Feed> feeds;        // by pair: how its nodes hang together; unless `port` its volts and ohms are 0
    std::vector<double> open_volts; // [V] by pair, of its plus against its minus node
    std::vector<double>
        ohms; // [ohm] row by row, by pair and pair: symmetric; a fall of constant power can turn it negative
    double ohm(std::size_t row, std::size_t column) const { return ohms[row * open_volts.size() + column]; }
};

// Vectors are empty unless solved. Throws std::invalid_argument if a node is not in the circuit.
TheveninSource thevenin(Circuit const& circuit, std::vector<NodePair> const& pairs, LoadsDo loads = LoadsDo::follow,
                        SolveOptions const& options = {});

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/thevenin_inl.hpp"
#endif
