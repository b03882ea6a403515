// A trace for programs.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/traced.hpp"

#include <string>

namespace bankwright {

std::string trace_json(Traced const& traced);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/trace_json_inl.hpp"
#endif
