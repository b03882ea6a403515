// The bank as it would be if its batteries were all the same: what is a run worth that no battery cuts short?
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <optional>

namespace bankwright {

// The same batteries all alike, at their mean capacity, charge, health, temperature and resistance, with jumpers that
// lose nothing. What this bank runs longer is what the differences between the batteries and their joining cost. None
// where the batteries are of several kinds, of which there is no mean.
std::optional<Bank> with_batteries_alike(Bank const& bank);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/batteries_alike_inl.hpp"
#endif
