// One wiring, fixed resistances, sources that change from moment to moment: what flows then, without solving again?
//
// Everything in a linear network is a sum of what each source makes alone. So the network is solved once for 1 V in
// each changing branch, once for 1 A through each load whose current depends on voltage, and once for all that stays;
// from then on a moment is V0 = h . E + v0 at the loads, their currents behind Z (in closed form where there is one
// load), and x = Y E + c I + x0 for whatever is watched. A change of a resistance asks for a new map.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/in_time/power_port.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/loads/port_loads.hpp"
#include "bankwright/solver/loads/ports.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/topology.hpp"

#include <optional>
#include <vector>

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
    PortMap(Circuit const& circuit, Topology const& topology, std::vector<int> const& sources, Watched const& watched,
            InstructionSet set = widest_here());

    Status status() const { return status_; } // solved, or what stood against making the map
    std::size_t values() const { return values_; }

    // `emfs` [V] by source; `answer` gets values() numbers, `load_amps` [A] one for each load, both only if solved.
    Status solve(double const* emfs, double* answer, double* load_amps);

private:
    Status settle_loads(double const* open_volts); // port_amps_
    double* column(std::size_t number) { return columns_.data() + number * stride_; }

    Status status_ = Status::solved;
    InstructionSet set_;
    std::size_t sources_, ports_count_, values_;
    std::size_t stride_; // of a column: what is watched, then the ports' open volts, padded to whole rows of lanes
    Ports ports_;
    std::vector<std::size_t> port_loads_;  // by port: its load
    std::vector<std::size_t> other_loads_; // the loads that are no ports
    std::vector<double> load_amps_;        // [A] of those, by load
    std::vector<double> port_amps_;
    LaneRows columns_; // what stays, by source, by port
    LaneRows sums_;
    std::optional<PowerPort> power_port_; // where it is the only one
    LaneRows open_volts_;                 // of that, by source
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/port_map_inl.hpp"
#endif
