// In which order is the bank put together, what must the meter read before and after each step, and what does it mean
// if it reads something else? And in which order is it taken apart?
//
// Every state on the way is solved, with the loads and chargers off; and so is every state that a mistake would have
// led to. Where the search for the order stands: hookup_order.hpp.
#pragma once

#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <string>

namespace bankwright {

// Why a bank must not be hooked up as described: no battery, or a loop that shorts some; nothing if it may.
std::optional<std::string> unfit_for_hookup(Bank const& bank);

// Throws std::invalid_argument for an option out of its range (network/option_limits.hpp).
void refuse_unfit(HookupOptions const& options);

// Throws std::invalid_argument for a bank of which unfit_for_hookup() says something, for unfit options, and where
// build() does.
HookupResult hookup(Bank const& bank, HookupOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup_inl.hpp"
#endif
