// What can be wrong with a bank that was described right: every single fault of its parts and of how they were joined,
// as a change of its circuit.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/part_kind.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/solver/variant.hpp"
#include "bankwright/wiring/places.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

enum class FaultKind {
    reversed,     // a battery stands the other way around: what should be on its + is on its -
    dead,         // a battery that gives no voltage
    dead_cell,    // one cell gives nothing and resists
    shorted_cell, // one cell gives nothing and conducts
    low,          // less charge than stated
    moved,        // one end of a conductor is on another terminal
    missing,      // a conductor is not there, or broken
    resistive,    // a joint, contact or device that resists more than it should; a battery worn inside
    open,         // a device that does not conduct, a plug that is not home, a load that takes nothing
    exchanged,    // the two leads of a receptacle, plug, motor, load or charger stand each where the other should
    stalled,      // a motor or load that takes more than it should
};

constexpr std::string_view name(FaultKind kind) {
    constexpr std::string_view names[] = {"reversed", "dead",      "dead-cell", "shorted-cell", "low",    "moved",
                                          "missing",  "resistive", "open",      "exchanged",    "stalled"};
    return names[static_cast<std::size_t>(kind)];
}

struct Fault {
    FaultKind kind = FaultKind::reversed;
    std::string part;
    std::string detail; // for people: "on B- instead of B+"; empty where the kind says all
    std::string on;     // of a moved end: the terminal that it is on
    std::string instead_of;
    PartKind of = PartKind::battery; // what `part` is
};

// The circuit of a bank with its elements side by side: small, to be copied by the thousand.
struct FaultyWiring {
    solver::Circuit circuit;
    std::vector<Element> elements;   // part by part, as in Network::parts
    bool current_is_stated = false;  // somebody has read what the motor takes: it takes no more
    std::vector<double> usual_volts; // [V] by load, on the wiring as described; empty: not known
};
FaultyWiring wiring_of(Network const& network);

// One fault, ready to be put into the wiring of any moment of its bank.
struct FaultChange {
    FaultKind kind = FaultKind::reversed;
    std::size_t part = 0;    // in Network::parts
    std::size_t element = 0; // in FaultyWiring::elements; the first of several
    std::size_t elements = 1;
    int terminal = 0;          // moved: where the end is now
    bool from_end = false;     // moved: it is the `from` end
    int cells = 0;             // of the battery
    int plus = -1, minus = -1; // exchanged: the terminals whose leads are
    bool is_multiple = false;  // resistive, dead_cell: the ladder multiplies what is there
    // What is not known of it, as a ladder of values with a factor (resistive) or a step (low) between them; empty if
    // nothing is left open. resistive: [ohm] added, or how many times;
    // dead_cell: how many times; stalled: how many times its current; low: share
    // of the open-circuit voltage that is lost.
    std::vector<double> ladder;
};

// Puts the fault into the wiring; `value` is one of its ladder.
void apply(FaultChange const& change, double value, FaultyWiring& wiring);

// What a fault makes of a branch of its element; an infinite resistance: nothing. Not of a turned battery and of
// exchanged leads, which change what all else is on.
solver::Branch changed(FaultChange const& change, double value, solver::Branch branch);

// How many times its current a load then takes; 1 where the fault is none of a load's, or its current was read.
double load_multiple(FaultChange const& change, double value, FaultyWiring const& wiring);

// Every single fault that the parts of this bank can have: an end of a conductor only on what its length reaches. The
// network is the bank's as described, at any moment.
std::vector<FaultChange> single_faults(Bank const& bank, Network const& network, Places const& places);

// The fault in words; its value, as fitted, is between two of its ladder.
Fault describe(FaultChange const& change, double low, double high, Network const& network);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/trace/faults_inl.hpp"
#endif
