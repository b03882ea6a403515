// The JSON document "plan".
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/planned.hpp"

#include <string>

namespace bankwright {

std::string plan_json(Planned const& planned);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/plan_json_inl.hpp"
#endif
