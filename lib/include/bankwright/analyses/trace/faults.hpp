// What can be wrong with a bank that is described right: every single fault of its parts and of how they were joined,
// as a change of its circuit.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/solver/variant.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

enum class FaultKind {
    reversed,     // a battery stands the other way round: what should be on its + is on its -
    dead,         // a battery that gives no voltage
    dead_cell,    // one cell gives nothing and resists
    shorted_cell, // one cell gives nothing and conducts
    low,          // less charge than stated
    moved,        // one end of a conductor is on another terminal
    missing,      // a conductor is not there, or broken
    resistive,    // a joint, contact or device that resists more than it should
    open,         // a device that does not conduct
};

constexpr std::string_view name(FaultKind kind) {
    constexpr std::string_view names[] = {"reversed", "dead",    "dead-cell", "shorted-cell", "low",
                                          "moved",    "missing", "resistive", "open"};
    return names[static_cast<std::size_t>(kind)];
}

struct Fault {
    FaultKind kind = FaultKind::reversed;
    std::string part;
    std::string detail; // for people: "on B- instead of B+"; empty where the kind says all
    std::string on;     // of a moved end: the terminal that it is on
    std::string instead_of;
};

// The circuit of a bank with its elements side by side: small, to be copied by the thousand.
struct FaultyWiring {
    solver::Circuit circuit;
    std::vector<Element> elements; // part by part, as in Network::parts
};
FaultyWiring wiring_of(Network const& network);

// One fault, ready to be put into the wiring of any moment of its bank.
struct FaultChange {
    FaultKind kind = FaultKind::reversed;
    std::size_t part = 0;    // in Network::parts
    std::size_t element = 0; // in FaultyWiring::elements
    int terminal = 0;        // moved: where the end is now
    bool from_end = false;   // moved: it is the `from` end
    int cells = 0;           // of the battery
    // What is not known of it, as a ladder of values with a factor (resistive) or a step (low) between them; empty if
    // nothing is left open. resistive: [ohm] added; low: share of the open-circuit voltage that is lost.
    std::vector<double> ladder;
};

// Puts the fault into the wiring; `value` is one of its ladder.
void apply(FaultChange const& change, double value, FaultyWiring& wiring);

// The one branch that the fault changes, as it is then; an infinite resistance: nothing. None for a turned battery,
// which changes what all else is on, and where what changes is an ideal join.
std::optional<solver::Change> branch_change(FaultChange const& change, double value, FaultyWiring const& wiring);

// Every single fault that the parts of this bank can have. The network is the bank's as described, at any moment.
std::vector<FaultChange> single_faults(Bank const& bank, Network const& network);

// The fault in words; its value, as fitted, is between two of its ladder.
Fault describe(FaultChange const& change, double low, double high, Network const& network);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/trace/faults_inl.hpp"
#endif
