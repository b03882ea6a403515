// Findings for programs: the JSON document "findings", version 1. Numbers are SI in full precision; what has no value
// is null, never a made-up number.
#pragma once

#include "bankwright/findings/verdict.hpp"
#include "bankwright/linkage.hpp"

#include <string>

namespace bankwright {

std::string findings_json(Verdicts const& verdicts);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/findings_json_inl.hpp"
#endif
