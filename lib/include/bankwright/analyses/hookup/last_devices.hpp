// Which breakers and switches must stay open so that no load and no plug has a closed path to the bank? A fuse or a
// plug is never asked to: neither is made to make or break a live circuit.
#pragma once

#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <string>
#include <utility>
#include <vector>

namespace bankwright {

// The + and - of every motor, load, charger output, and both sides of a converter: where a path through the bank would
// close.
std::vector<std::pair<std::string, std::string>> load_terminals(Bank const& bank);

// By connection of the partial bank. The fewest that do it; of equals those with most breakers, then the first in the
// author's order. A load or plug that no breaker or switch keeps apart does not count. A battery selector is asked only
// where a plug has nothing else.
std::vector<char> last_devices(Bank const& bank, PartialBank const& partial);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/last_devices_inl.hpp"
#endif
