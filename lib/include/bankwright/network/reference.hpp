// Which node is the bank's own negative end, against which a meter reads every terminal?
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/network.hpp"

namespace bankwright {

// Nominal potentials are carried along conductors and closed devices, and through batteries by their nominal voltage.
// Of the island with most batteries (the first in the author's order of equals): the negative post at the lowest
// potential, the first in the author's order of equals. On a miswired bank two ways to a node may disagree; then the
// potential it was first given counts, going outwards from the island's first battery. Loads and chargers carry
// nothing. A bank without batteries counts from its first terminal.
int negative_end(Bank const& bank, Network const& network);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/network/reference_inl.hpp"
#endif
