// A solution for programs: the JSON document "solution", version 1. Numbers are SI in full precision; what has no value
// is null, never a made-up number.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/solved.hpp"

#include <string>

namespace bankwright {

std::string solution_json(Solved const& solved);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/solution_json_inl.hpp"
#endif
