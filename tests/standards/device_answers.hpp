// What the devices answer to a case: one function a quantity that tests/standards/*/cases.toml may name.
#pragma once

#include "standards/cases.hpp"

namespace standards {

// Throws std::out_of_range for a quantity that nobody answers.
double device_answer(Case const&);

} // namespace standards
