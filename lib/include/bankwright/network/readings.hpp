// What would meters show? The solver's numbers as quantities, part by part and terminal by terminal.
//
// Signs, everywhere: current is positive
//   in a battery when it discharges;
//   in a jumper or cable from `from` to `to`; in a breaker or fuse from line to load; in a switch from 1 to 2;
//   in a connector's positive pole from receptacle to plug;
//   in a load, motor or charger from its + to its -, so a charger that charges reads negative.
// Voltage is + against - for a battery, load, motor and charger, and else the drop in the direction of positive
// current. Power is voltage x current: what a battery delivers, what every other part takes (a charger that gives:
// negative). So the batteries' powers sum to the sum of all others.
#pragma once

#include "bankwright/bank/part_kind.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// busbar: current is what flows through it, half the sum of what its conductors carry; voltage and power are 0
// connector: current and voltage of its positive pole, power of both
// charger: current and power summed over its outputs, voltage their mean
struct PartReading {
    std::string id;
    PartKind kind = PartKind::battery;
    Current current{};
    Voltage voltage{}; // not a number between islands that no closed path joins: an open breaker with nothing behind it
    Power power{};
};

struct TerminalReading {
    std::string name;
    std::optional<Voltage> voltage; // against the reference; none on an island with no path to it
};

// In the author's order. Where the circuit was not solved no part is read, and no terminal has a voltage.
std::vector<PartReading> read_parts(Network const& network, solver::Solution const& solution);
std::vector<TerminalReading> read_terminals(Network const& network, solver::Solution const& solution);

// One part of a circuit that was solved; it must have elements.
PartReading read_part(NetworkPart const& part, Network const& network, solver::Solution const& solution);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/network/readings_inl.hpp"
#endif
