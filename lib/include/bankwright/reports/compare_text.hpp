// Banks side by side, for people: what differs first.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/planning/comparison.hpp"

#include <string>
#include <vector>

namespace bankwright {

std::string compare_text(std::vector<BankFigures> const& banks);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/compare_text_inl.hpp"
#endif
