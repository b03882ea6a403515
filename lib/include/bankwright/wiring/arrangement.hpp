// How are the batteries arranged? Recognized from the wiring, in the trade's notation: 3S2P is strings of three in
// series, two strings in parallel.
#pragma once

#include "bankwright/wiring/wiring_verdict.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

enum class ArrangementForm {
    strings,    // equal strings, joined at their two ends only
    cross_tied, // equal strings with joints between them part of the way up
    unequal,    // strings between the same two points, but not of the same number
    none,       // no such thing
};

struct Arrangement {
    ArrangementForm form = ArrangementForm::none;
    int series = 0;                        // batteries a string
    int parallel = 0;                      // strings
    std::vector<std::vector<int>> strings; // battery edges, negative end first; strings and unequal only
    int negative_group = -1;               // of the bank's two ends, in the verdict's groups
    int positive_group = -1;

    // "3S2P", or nothing.
    std::optional<std::string> notation() const;
};

// Of the island that feeds the motor, or else of the one with most batteries. Polarity is not looked at: a string with
// one battery turned around is still a string.
Arrangement arrangement(WiringGraph const& graph, std::vector<WiringEdge> const& edges, WiringVerdict const& verdict);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/wiring/arrangement_inl.hpp"
#endif
