// One wiring, fixed resistances, sources that change from moment to moment: what flows then, without solving again?
//
// Everything in a linear network is a sum of what each source makes alone. So the network is solved once for 1 V in
// each changing branch, once for 1 A through each load whose current depends on voltage, and once for all that stays;
// from then on a moment is V0 = h . E + v0 at the loads, their currents behind Z (in closed form where there is one
// load), and x = Y E + c I + x0 for whatever is watched. A change of a resistance asks for a new map.
#pragma once

#include <vector>

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/port_loads.hpp"
#include "bankwright/solver/ports.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/topology.hpp"

namespace bankwright::solver {

// What a map answers with: volts of these nodes, then amperes of these branches.
struct Watched {
    std::vector<int> nodes;
    std::vector<int> branches;
};
Watched everything(Circuit const& circuit);

class PortMap {
public:
    // `sources`: the branches whose emf changes. The loads keep their laws. `topology` is that of the circuit.
    PortMap(Circuit const& circuit, Topology const& topology, std::vector<int> const& sources, Watched const& watched);

    Status status() const { return status_; } // solved, or what stood against making the map
    std::size_t values() const { return values_; }

    // `emfs` [V] by source; `answer` gets values() numbers, `load_amps` [A] one for each load, both only if solved.
    Status solve(double const* emfs, double* answer, double* load_amps);

private:
    Status settle_loads(); // port_amps_ for the open volts of ports_

    Status status_ = Status::solved;
    static constexpr std::size_t block = 4; // values that are summed side by side
    std::size_t sources_ = 0, values_ = 0, padded_ = 0;
    Ports ports_;
    std::vector<std::size_t> port_loads_; // by port: its load
    std::vector<double> columns_;         // of values, padded to whole blocks: what stays, by source, by port
    std::vector<double> open_rows_;       // by port its open volts: what stays, by source
    std::vector<double> load_amps_;       // [A] of the loads that are no ports
    std::vector<double> port_amps_;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/port_map_inl.hpp"
#endif
