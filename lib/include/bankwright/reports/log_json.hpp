// A hook-up as far as it has come, for programs: the JSON document "log", version 1.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/logged.hpp"

#include <string>

namespace bankwright {

std::string log_json(LoggedHookup const& logged);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/log_json_inl.hpp"
#endif
