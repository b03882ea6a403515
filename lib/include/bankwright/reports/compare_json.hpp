// The JSON document "comparison".
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/planning/comparison.hpp"

#include <string>
#include <vector>

namespace bankwright {

std::string compare_json(std::vector<BankFigures> const& banks);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/compare_json_inl.hpp"
#endif
