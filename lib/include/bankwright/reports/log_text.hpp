// A hook-up as far as it has come, for people: what was read beside what was expected, and where it stands.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/logged.hpp"
#include "bankwright/reports/style.hpp"

#include <string>

namespace bankwright {

std::string log_text(LoggedHookup const& logged, TextStyle const& style = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/log_text_inl.hpp"
#endif
