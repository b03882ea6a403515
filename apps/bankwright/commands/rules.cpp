#include "commands/rules.hpp"

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/reports/rule_reference.hpp"
#include "bankwright/rules/catalog.hpp"
#include "commands/rule_names.hpp"

#include <vector>

using namespace bankwright;

Outcome run(RulesRequest const& request, bool) {
    std::vector<RuleInfo const*> wanted;
    bool one = false;
    for (auto const* info : all_rules()) {
        if (info->id == request.id) one = true;
        if (request.id.empty() || info->id == request.id || family(info->id) == request.id) wanted.push_back(info);
    }
    if (wanted.empty()) return {{}, "bankwright: " + unknown_rule(request.id) + "\n", ExitCode::unusable};
    if (request.format == Format::json) return {rules_json(wanted), {}, ExitCode::clean};
    return {one ? rule_text(*wanted.front()) : rules_text(wanted), {}, ExitCode::clean};
}
