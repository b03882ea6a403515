// In which order does a person want to read findings? The worst first, within a level as they stand in the file.
#pragma once

#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"

namespace bankwright {

// Accepted ones go last, those without a place in the file go first in their level; otherwise equal ones keep their
// order.
void order(Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/findings/order_inl.hpp"
#endif
