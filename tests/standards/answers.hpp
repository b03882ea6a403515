// What the library answers to a published case. The `kind` of its file says who is asked.
#pragma once

#include "standards/cases.hpp"

namespace standards {

// Throws std::out_of_range for a kind or quantity that nobody answers.
double answer(Case const&);

} // namespace standards
