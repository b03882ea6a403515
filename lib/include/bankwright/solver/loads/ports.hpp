// What do the loads see of the network? For the loads' currents I it is V = V0 - Z I at their ports.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/linear_network.hpp"
#include "bankwright/solver/topology.hpp"

#include <vector>

namespace bankwright::solver {

struct Ports {
    std::vector<Law> laws;
    std::vector<double> open_volts; // [V] with the loads of all ports at rest
    std::vector<double> ohms;       // [ohm] row by row; symmetric, positive diagonal
    double ohm(std::size_t row, std::size_t column) const { return ohms[row * laws.size() + column]; }
};

// The ports of the numbered loads, each of which has a line. `line_amps` [A] by line: every other source, as for
// LinearNetwork::volts. V0 takes one solve, Z one for each port with 1 A through it.
Ports reduce_to_ports(Circuit const& circuit, Topology const& topology, LinearNetwork const& network,
                      std::vector<double> const& line_amps, std::vector<std::size_t> const& loads);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/loads/ports_inl.hpp"
#endif
