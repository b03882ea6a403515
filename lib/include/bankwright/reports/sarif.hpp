// Findings for code-scanning tools: a SARIF 2.1.0 log (OASIS standard).
#pragma once

#include "bankwright/findings/rule_info.hpp"
#include "bankwright/findings/verdict.hpp"
#include "bankwright/linkage.hpp"

#include <string>
#include <vector>

namespace bankwright {

// `rules`: every rule there is, so that a reader of the log can explain each result.
std::string findings_sarif(Verdicts const& verdicts, std::vector<RuleInfo const*> const& rules);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/sarif_inl.hpp"
#endif
