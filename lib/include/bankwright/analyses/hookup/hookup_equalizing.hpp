// What flows when a step closes a loop through batteries?
#pragma once

#include "bankwright/analyses/hookup/hookup_meter.hpp"
#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <optional>

namespace bankwright {

// None where the connection closes no loop, or one in which no battery stands.
std::optional<Equalizing> equalizing(Bank const& bank, PartialBank const& partial, HookupMeter const& meter,
                                     Made const& made, Potentials const& now, std::size_t connection);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/hookup_equalizing_inl.hpp"
#endif
