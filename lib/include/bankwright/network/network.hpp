// The bank as the solver sees it, and which number is whose: terminal <-> node, part <-> branches, joins and loads.
#pragma once

#include "bankwright/bank/part_kind.hpp"
#include "bankwright/solver/circuit.hpp"

#include <stdexcept>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace bankwright {

// One path through a part, from node to node: an element of the circuit, or a gap.
struct Element {
    enum class Is { gap, branch, join, load };
    Is is = Is::gap;
    int index = -1; // into Circuit::branches, joins or loads; -1 for a gap
    int from = 0;   // its current is positive from here
    int to = 0;     // to here
};

// What a part became:
//   battery (minus to plus), conductor, breaker, fuse, switch, shunt, relay, motor, load: one element
//   selector: 1 to common, 2 to common
//   busbar: one gap whose two nodes are the busbar
//   connector: positive pole, negative pole
//   charger: one element an output, then the joins of its negatives if it is not isolated
//   converter: input, output, then the join of their negatives if it is not isolated
struct NetworkPart {
    std::string id;
    PartKind kind = PartKind::battery;
    std::vector<Element> elements;
};

// A converter at work: its input takes what its output gives, over its efficiency. Both are loads of the circuit, and
// the input is there at full power.
struct Coupling {
    int input = 0; // indexes into Circuit::loads
    int output = 0;
    double efficiency = 1.0;
};

// A motor whose control holds it: it draws by its law, and no more than `most`.
struct HeldMotor {
    int load = 0;      // index into Circuit::loads
    double most = 0.0; // [A]
    solver::SquareLaw free;
};

struct Network {
    solver::Circuit circuit;                    // node i is terminal i; `reference` is the bank's own negative end
    std::vector<std::string> terminals;         // in the author's order
    std::unordered_map<std::string, int> nodes; // by terminal name
    std::vector<NetworkPart> parts;             // in the author's order
    std::vector<Coupling> couplings;            // converters at work
    std::vector<HeldMotor> held;                // motors with a max_current, each a load by its own law
};

// The node of a terminal. Throws std::out_of_range, naming it, if the bank has no such terminal.
inline int node_of(Network const& network, std::string const& terminal) {
    auto const it = network.nodes.find(terminal);
    if (it == network.nodes.end()) throw std::out_of_range("the bank has no terminal `" + terminal + "`");
    return it->second;
}

// What a part became. Throws std::out_of_range, naming it, if the bank has no such part.
inline NetworkPart const& part_of(Network const& network, std::string_view id) {
    for (auto const& part : network.parts)
        if (part.id == id) return part;
    throw std::out_of_range("the bank has no part `" + std::string(id) + "`");
}

} // namespace bankwright
