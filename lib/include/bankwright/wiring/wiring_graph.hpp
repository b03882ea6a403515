// The wiring as a graph of terminals: what is joined to what, whatever the resistances are.
// Every breaker, fuse and switch is taken as closed and every connector as mated: a mistake must be found before the
// breaker is closed, not after.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <string>
#include <unordered_map>
#include <vector>

namespace bankwright {

enum class WiringEdgeKind : unsigned char {
    conductor, // a jumper or cable
    contact,   // through a breaker, fuse, switch, shunt, relay, one side of a selector, one pole of a connector, or the
               // common negative of a charger or converter
    battery,   // from its negative post to its positive one
    load,      // a motor, a load or the input of a converter, from its + to its -
    charger,   // one output of a charger or converter, from its + to its -
};

// Red claims the positive side, black and yellow the negative one (marine DC practice).
enum class ConductorSide : unsigned char { unmarked, positive, negative };
ConductorSide claimed_side(Conductor const& conductor);

// A plain record, small on purpose: the search for the repair of a miswire copies these by the thousand.
struct WiringEdge {
    WiringEdgeKind kind = WiringEdgeKind::conductor;
    bool removed = false; // only in a trial of another wiring
    int from = 0;         // terminal
    int to = 0;           // terminal
    int part = 0;         // index in WiringGraph::parts
    double volts = 0.0;   // [V] battery: counted rise; motor, load: what it expects, 0 if nothing says
    double least = 0.0;   // [V] load: the window that it declares for itself, 0 and 0 if it does not
    double most = 0.0;    // [V]
    ConductorSide side = ConductorSide::unmarked; // conductor: the side that its color claims
};

struct WiringPart {
    std::string id;
    PartKind kind = PartKind::battery;
    std::size_t index = 0; // in its vector of the Bank
};

struct WiringGraph {
    std::vector<std::string> terminals; // names
    std::vector<int> owner;             // by terminal: index of its part
    std::vector<WiringPart> parts;
    std::vector<WiringEdge> edges;
    std::unordered_map<std::string, int> terminal_named;
    std::unordered_map<std::string, int> part_named;
    bool lithium = false; // every battery is a lithium one: nominal voltages are then held less exactly

    std::string const& id(WiringEdge const& edge) const { return parts[as_index(edge.part)].id; }
    std::string const& name(int terminal) const { return terminals[as_index(terminal)]; }
    WiringPart const& owner_of(int terminal) const { return parts[as_index(owner[as_index(terminal)])]; }
};

// A conductor's end on a terminal that the bank does not have is left out: the reader has already said so.
WiringGraph wiring_graph(Bank const& bank);

// The round voltage by which batteries are counted: lead-acid as labeled, a 12.8 V lithium battery as 12 V.
Voltage counted_voltage(Battery const& battery);

// The run of a conductor edge.
inline Run const& run_of(Bank const& bank, WiringGraph const& graph, WiringEdge const& edge) {
    auto const& part = graph.parts[as_index(edge.part)];
    return (part.kind == PartKind::jumper ? bank.jumpers : bank.cables)[part.index];
}

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/wiring/wiring_graph_inl.hpp"
#endif
