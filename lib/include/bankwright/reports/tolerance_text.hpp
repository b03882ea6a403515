// A tolerance study for people and for programs: the JSON document "tolerance", version 1, has SI numbers in full.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/toleranced.hpp"

#include <string>

namespace bankwright {

std::string tolerance_text(Toleranced const& toleranced);
std::string tolerance_json(Toleranced const& toleranced);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/tolerance_text_inl.hpp"
#endif
