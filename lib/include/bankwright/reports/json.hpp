// Findings, solutions and runs for programs: the JSON documents "findings", "solution" and "discharge", version 1.
// Numbers are SI in full precision; what has no value is null, never a made-up number.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/discharged.hpp"
#include "bankwright/reports/solved.hpp"
#include "bankwright/reports/verdict.hpp"

#include <string>

namespace bankwright {

std::string findings_json(Verdicts const& verdicts);
std::string solution_json(Solved const& solved);
std::string discharge_json(Discharged const& discharged);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/json_inl.hpp"
#endif
