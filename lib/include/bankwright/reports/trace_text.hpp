// A trace for people: what is most likely wrong, what else it could be, where to put the leads next.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/style.hpp"
#include "bankwright/reports/traced.hpp"

#include <string>

namespace bankwright {

std::string trace_text(Traced const& traced, TextStyle const& style = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/trace_text_inl.hpp"
#endif
