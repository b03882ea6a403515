// A hook-up for programs: the JSON document "hookup", version 1. Numbers are SI in full precision; a reading between
// points that share no path is null.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/hooked_up.hpp"

#include <string>

namespace bankwright {

std::string hookup_json(HookedUp const& hooked);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/hookup_json_inl.hpp"
#endif
