// A tolerance study for people.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/toleranced.hpp"

#include <string>

namespace bankwright {

std::string tolerance_text(Toleranced const& toleranced);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/tolerance_text_inl.hpp"
#endif
