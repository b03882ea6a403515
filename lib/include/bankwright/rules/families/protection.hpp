// protection: does something open before the copper burns, close enough to the battery, and can it?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/families/protection_infos.hpp"
#include "bankwright/rules/rule.hpp"

namespace bankwright {

void check_protection(Seen const& seen, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/families/protection_inl.hpp"
#endif
