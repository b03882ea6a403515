// A run for people: how long, what ended it, and each battery on the way.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/through_time.hpp"

#include <string>

namespace bankwright {

std::string discharge_text(Discharged const& discharged);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/discharge_text_inl.hpp"
#endif
