// Short circuits for people: place by place what flows and what ends it, then each device's and each conductor's duty.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/short_circuited.hpp"

#include <string>

namespace bankwright {

std::string short_circuit_text(ShortCircuited const& shorted);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/short_circuit_text_inl.hpp"
#endif
