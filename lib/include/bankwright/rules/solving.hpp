// solve: is there an operating point at all? The solver's statuses turned into findings.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/rule.hpp"

#include <array>

namespace bankwright {

inline constexpr std::array solving_rules{
    RuleInfo{"solve/no-solution", Level::error, "0.1.0",
             "no operating point exists: the loads ask for more power than the bank can supply through its resistance",
             "the voltage collapses as soon as they are switched on",
             "ask for less power, shorten or thicken the conductors, or add strings",
             "maximum power transfer: E2 / 4R, Lessons in Electric Circuits, vol. I, ch. 10 [read]"},
};

void check_solving(Seen const& seen, Findings& findings);

// The same finding for a caller that has solved the bank already; nothing if it was solved.
void say_unsolved(Bank const& bank, OperatingPoint const& point, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/solving_inl.hpp"
#endif
