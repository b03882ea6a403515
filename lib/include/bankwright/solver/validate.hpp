// Is a circuit one that can be solved at all? Asked before any arithmetic, so that no input can crash the solver.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"

namespace bankwright::solver {

bool is_valid(Law const& law);

// Nodes in range, resistances positive with a finite reciprocal, every number finite.
bool is_valid(Circuit const& circuit);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/validate_inl.hpp"
#endif
