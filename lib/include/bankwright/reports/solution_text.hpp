// An operating point for people: what a meter would read at every terminal and in every part.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/solved.hpp"
#include "bankwright/reports/style.hpp"

#include <string>

namespace bankwright {

std::string solution_text(Solved const& solved, TextStyle const& style = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/solution_text_inl.hpp"
#endif
