// Banks side by side on one page: what differs first, then each as it is wired.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/planning/comparison.hpp"

#include <string>
#include <vector>

namespace bankwright::page {

// An HTML document without scripts that fetches nothing. `banks` and `figures` are of the same banks, in one order;
// throws std::invalid_argument where they are not as many.
std::string comparison_to_html(std::vector<BankFigures> const& figures, std::vector<Bank> const& banks);

} // namespace bankwright::page

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/page/comparison_page_inl.hpp"
#endif
