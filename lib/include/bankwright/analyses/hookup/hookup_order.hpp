// In which order may the connections of a bank be made?
//
// Dead leads first, with no battery on them; then each string, the links between strings, the live leads, the negative
// leads last. Fuses go in while all is dead. Switches and breakers stay open until every conductor is landed; what
// closes the last gap before a load or a plug is open while the plugs go in, and closed at the very end (common
// practice, no source). Within these, every order that closes no loop is as safe as any other. How many loops must
// close is a fact of the wiring; what the gap reads when one does is a matter of the order, and all orders are searched
// for the one whose largest such reading is the least.
#pragma once

#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace bankwright {

enum class HookupPhase {
    dead_lead,     // between two points that no battery is on
    fuse,          // fitted before anything is live; one that sits on a battery's post, among the live leads
    string_jumper, // + of one battery to - of another
    link,          // between posts of one sign: strings in parallel, and ties across
    live_lead,     // from a battery to anything else, but for
    negative_lead, // from the bank's most negative posts
    device,        // a switch or breaker behind which everything stays dead
    plug,
    last_device, // one that closes the last gap before a load or a plug
};

struct HookupOrder {
    std::vector<std::size_t> sequence; // PartialBank::connections()
    std::vector<HookupPhase> phase;    // by connection
    double largest_gap = 0.0;          // [V] over a gap that closes a loop
    std::size_t states = 0;            // sets of made connections that were solved
    bool proven = true;                // false: too many sets to try them all; the least gap was taken at each step
};

HookupOrder hookup_order(Bank const& bank, PartialBank const& partial);

// [V] across the gap that a connection closes, were it made now: of a plug, what its two pairs of poles differ by.
// None where nothing else joins its two sides, so that it closes no loop.
std::optional<double> closing_gap(Connection const& connection, Potentials const& potentials);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/hookup_order_inl.hpp"
#endif
