// A sizing for programs: the JSON document "size", version 1. Numbers are SI in full precision.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/sized.hpp"

#include <string>

namespace bankwright {

std::string sizing_json(Sized const& sized);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/sizing_json_inl.hpp"
#endif
