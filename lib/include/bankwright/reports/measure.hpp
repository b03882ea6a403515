// A finding's number and unit as a person writes them: "12.7 V", "4.2 mohm", "3.1 %".
#pragma once

#include "bankwright/linkage.hpp"

#include <string>
#include <string_view>

namespace bankwright {

// About four significant digits; electrical units with an engineering prefix.
std::string measure(double value, std::string_view unit);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/measure_inl.hpp"
#endif
