// A charge for people: how long, each output's stages, whether every battery is full and none was driven too high.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/through_time.hpp"

#include <string>

namespace bankwright {

std::string recharge_text(Recharged const& recharged);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/recharge_text_inl.hpp"
#endif
