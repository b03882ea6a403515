// What the solver answers to a circuit of a book.
#pragma once

#include "standards/cases.hpp"

namespace standards {

// Throws std::out_of_range for a circuit, path, node or quantity that there is not.
double circuit_answer(Case const&);

} // namespace standards
