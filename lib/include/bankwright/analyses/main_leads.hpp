// Where on a bank of parallel strings are the main leads best landed? Every pair of string ends is weighed, and the
// most promising are solved.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/wiring/arrangement.hpp"

#include <string>

namespace bankwright {

struct MainLeads {
    std::string positive; // the battery post that the positive lead is landed on
    std::string negative;
    double worst_share = 1.0; // of the busiest string, over an even share
};

// The pair that shares the current most evenly. A bank without a choice keeps its pair and its `worst_share`.
MainLeads best_main_leads(Bank const& bank, WiringGraph const& graph, Arrangement const& arrangement);

// The busiest string's current over an even share, in the operating point as described.
double worst_share(Bank const& bank, WiringGraph const& graph, Arrangement const& arrangement);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/main_leads_inl.hpp"
#endif
