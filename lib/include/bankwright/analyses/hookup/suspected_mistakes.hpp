// Which single mistake may be behind a wrong reading, how likely is each beforehand, and how does the network stand
// with it? More than a sheet warns of (hookup_mistakes.hpp): an end may be on any terminal that its length reaches.
#pragma once

#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/wiring/places.hpp"

#include <optional>
#include <vector>

namespace bankwright {

struct SuspectedMistake {
    std::optional<Mistake> mistake; // none: all is as described, and the reading is at fault
    Deviation deviation;
    int connection = -1; // the mistake is made with this one; -1: it is there from the first
    double weight = 0.0; // how often, against each other
    double spread = 0.0; // [V] of the emf that it leaves open, one standard deviation
};

// Those with what is `there`: made, about to be made, or in the hand. A battery that was read alone and found right is
// neither low nor dead.
std::vector<SuspectedMistake> suspected_mistakes(Bank const& bank, PartialBank const& partial, Places const& places,
                                                 std::vector<char> const& battery_is_right, Made const& there);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/suspected_mistakes_inl.hpp"
#endif
