// A run and a charge for programs: the JSON documents "discharge" and "recharge", version 1. Numbers are SI in full
// precision; what has no value is null, never a made-up number.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/through_time.hpp"

#include <string>

namespace bankwright {

std::string discharge_json(Discharged const& discharged);
std::string recharge_json(Recharged const& recharged);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/time_json_inl.hpp"
#endif
