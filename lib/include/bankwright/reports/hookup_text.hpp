// A hook-up for the person who does it: numbered steps, what the meter must read, what it means if it does not.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/hooked_up.hpp"
#include "bankwright/reports/style.hpp"

#include <string>

namespace bankwright {

std::string hookup_text(HookedUp const& hooked, TextStyle const& style = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/hookup_text_inl.hpp"
#endif
