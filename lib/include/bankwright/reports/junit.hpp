// Findings for build servers: the JUnit XML that they read. A file is a test suite, a finding a test case.
#pragma once

#include "bankwright/findings/verdict.hpp"
#include "bankwright/linkage.hpp"

#include <string>

namespace bankwright {

// A finding at or above `fail_on`, or the verdict's own, is a failed case, a milder one a passed case, an accepted one
// a skipped case. A file in which nothing is wrong has one case, passed.
std::string findings_junit(Verdicts const& verdicts, Level fail_on = Level::error);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/junit_inl.hpp"
#endif
