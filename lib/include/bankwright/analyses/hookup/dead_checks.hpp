// What is checked with an ohmmeter before the first battery is joined?
//
// Continuity of every run from one place to another, and of every lead of a plug; none from + to -; none to the hull
// (common practice, no source). Two runs that go the same way are measured as a loop, so that both leads of the meter
// are in one place. A load without a plug shows itself between + and -: its electronics may conduct, and so may a
// motor's winding, so that the reading is told from a short and no more is expected of it.
#pragma once

#include "bankwright/analyses/hookup/hookup_probes.hpp"
#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <vector>

namespace bankwright {

// `dead`: what is made by then. `conducting`: the same with every load conducting.
std::vector<DeadCheck> dead_checks(Bank const& bank, PartialBank const& partial, HookupProbes const& probes,
                                   Potentials const& dead, Potentials const& conducting);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/dead_checks_inl.hpp"
#endif
