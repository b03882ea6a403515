// A tolerance study for programs: the JSON document "tolerance", version 1. Numbers are SI in full precision; what has
// no value is null, never a made-up number.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/toleranced.hpp"

#include <string>

namespace bankwright {

std::string tolerance_json(Toleranced const& toleranced);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/tolerance_json_inl.hpp"
#endif
