// From the bank to its circuit: every terminal is a node, every part adds its elements.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/network/network.hpp"

namespace bankwright {

// Throws std::invalid_argument, naming part and key, where a part lacks what its model needs, a run names an unknown
// terminal, two parts share a name, or a charge or throttle is not 0 % to 100 %. A bank that the reader found without
// error has none of these. Throws likewise for a moment out of its range (option_limits.hpp).
Network build(Bank const& bank, Moment const& moment = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/network/build_inl.hpp"
#endif
