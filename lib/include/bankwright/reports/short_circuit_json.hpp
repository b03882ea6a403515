// Short circuits for programs: the JSON document "short-circuit", version 1. Numbers are SI in full precision; a time
// that no standard bounds is null.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/short_circuited.hpp"

#include <string>

namespace bankwright {

std::string short_circuit_json(ShortCircuited const& shorted);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/short_circuit_json_inl.hpp"
#endif
