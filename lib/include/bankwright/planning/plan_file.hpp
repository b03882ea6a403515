// The bank file of a planned bank, with what was asked for and why each part is what it is, in comments.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/planning/plan.hpp"
#include "bankwright/planning/wish.hpp"

#include <string>

namespace bankwright {

// "36 V, a motor of 45 A, 20 ft to the bow, 4 h"
std::string in_words(Wish const& wish);

// "3 in parallel would not do: ..."; empty where there is nothing less.
std::string why_no_less(PlanChoice const& choice);

// Reads back as the bank, to the last bit.
std::string plan_file(Wish const& wish, PlannedBank const& planned);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/planning/plan_file_inl.hpp"
#endif
