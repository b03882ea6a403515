// What do the rules say about themselves? For people and for programs, always the same text.
#pragma once

#include "bankwright/findings/rule_info.hpp"
#include "bankwright/linkage.hpp"

#include <string>
#include <vector>

namespace bankwright {

// A list: id, level, what each looks for.
std::string rules_text(std::vector<RuleInfo const*> const& rules);

// One rule at length: what, why, what to do, source.
std::string rule_text(RuleInfo const& rule);

// The JSON document "rules", version 1.
std::string rules_json(std::vector<RuleInfo const*> const& rules);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/rule_reference_inl.hpp"
#endif
