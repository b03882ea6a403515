// Which mistakes can be made while a bank is hooked up, and how does the network stand with one of them?
#pragma once

#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <vector>

namespace bankwright {

struct PossibleMistake {
    Mistake mistake;
    Deviation deviation;
    int connection = -1; // made when this one is; -1: there from the first
};

// Batteries turned, low, or with a dead cell; an end landed on another terminal of the same part, on another battery's
// post, or on another busbar; the two leads of a plug, motor, load or charger exchanged. Not among them: what makes no
// difference once everything is closed.
std::vector<PossibleMistake> possible_mistakes(Bank const& bank, PartialBank const& partial);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/hookup_mistakes_inl.hpp"
#endif
