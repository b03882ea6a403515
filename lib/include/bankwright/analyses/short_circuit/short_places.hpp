// Between which terminals can a short circuit be?
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"

#include <string>
#include <vector>

namespace bankwright {

struct TerminalPair {
    std::string terminal;
    std::string against;
    Voltage voltage{}; // between them, every device closed and every load off
};

// Every terminal on which a device, a load or a conductor's end sits and which stands at least so far above the one
// that it is paired with: the - of its own plug, motor, load or charger output, else the lowest negative post of what
// feeds it.
std::vector<TerminalPair> short_places(Bank const& bank, Voltage least);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/short_circuit/short_places_inl.hpp"
#endif
