// What a battery on a load, on a charger or shorted answers to a case: by the analyses, on a bank of that one battery.
#pragma once

#include "standards/cases.hpp"

namespace standards {

// Whether one of these answers is asked for.
bool asks_for_a_course(Case const&);
double course_answer(Case const&);

} // namespace standards
