// Is this wiring right, whatever the resistances? Potentials are carried along the graph: a loop that does not add up
// to nothing, a load that sees the wrong voltage and a battery that no load can reach are facts of the graph alone.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/wiring/wiring_graph.hpp"

#include <cstddef>
#include <limits>
#include <vector>

namespace bankwright {

enum class FeedState {
    fed,           // sees what it expects
    open,          // no closed path to a battery that does not run through another load
    reversed,      // its + is at the lower potential
    wrong_voltage, // neither of these, and not what it expects
};

struct LoadVerdict {
    int edge = 0; // in the edges that were judged
    FeedState state = FeedState::fed;
    double volts = 0.0; // [V] counted, from its + to its -; 0 where it is open
};

struct WiringVerdict {
    std::vector<int> group; // by terminal: terminals of one group are joined by conductors and closed devices
    int groups = 0;
    std::vector<double> potential; // [V] by group, counted from the lowest of its island
    std::vector<double> top;       // [V] by island: its highest potential
    std::vector<int> island;       // by group: groups of one island are joined through batteries
    std::vector<int> shorted;      // battery edges with both posts in one group
    std::vector<int> clashes;      // battery edges that close a loop which does not add up to nothing
    std::vector<int> unused;       // battery edges that can carry no current to any load
    std::vector<LoadVerdict> loads;
    int marking_faults = 0; // colors, connector poles and breakers that are on the side they should not be

    int group_of(int terminal) const { return group[as_index(terminal)]; }
    double potential_of(int terminal) const { return potential[as_index(group_of(terminal))]; }
    int island_of(int terminal) const { return island[as_index(group_of(terminal))]; }
    // Markings do not count here: they tell which of several explanations is the likely one.
    bool right() const;
};

// `edges` are the graph's own or a trial of another wiring of the same terminals. Once more than `most_wrongs`
// batteries are known to be shorted or to clash the search stops there: more detail would not help.
WiringVerdict judge(WiringGraph const& graph, std::vector<WiringEdge> const& edges,
                    std::size_t most_wrongs = std::numeric_limits<std::size_t>::max());

// Two counted voltages closer than this are the same: less than half of the smallest step between labels (2 V).
inline constexpr double same_volts = 0.5; // [V]

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/wiring/wiring_verdict_inl.hpp"
#endif
