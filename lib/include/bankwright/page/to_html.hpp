// A bank on one page that needs nothing but itself: for a phone on the dock, a desk and a printer.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/page/bank_report.hpp"

#include <string>

namespace bankwright::page {

// An HTML document without scripts that fetches nothing.
std::string to_html(BankReport const& report);

} // namespace bankwright::page

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/page/to_html_inl.hpp"
#endif
