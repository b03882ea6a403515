// A plan for people: what is proposed and why no less, what else will do, what to buy.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/planned.hpp"

#include <string>

namespace bankwright {

std::string plan_text(Planned const& planned);
// Numbered from 1, the proposed one first.
std::string banks_side_by_side(PlanResult const& plans);
// One line a problem, and its help; empty where there is none.
std::string plan_problems(Planned const& planned);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/plan_text_inl.hpp"
#endif
