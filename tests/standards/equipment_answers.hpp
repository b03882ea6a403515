// What conductors, protective devices and motors answer to a case.
#pragma once

#include "standards/cases.hpp"

namespace standards {

// Throws std::out_of_range for a quantity that nobody answers.
double equipment_answer(Case const&);

} // namespace standards
