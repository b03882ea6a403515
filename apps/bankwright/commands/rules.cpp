#include "commands/rules.hpp"

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/reports/rule_reference.hpp"
#include "bankwright/rules/catalog.hpp"
#include "common_options.hpp"
#include "rule_names.hpp"

#include <vector>

using namespace bankwright;

Usage RulesCommand::usage() {
    return {.options = {{.names = "id",
                         .kind = option::Text{id},
                         .help = "A rule, or a family of rules; all rules if left out",
                         .stands_for = "ID"},
                        how_to_print(format, {Format::text, Format::json})},
            .closing = "Example: bankwright rules wiring/shorted-loop"};
}

Outcome RulesCommand::run(bool) const {
    std::vector<RuleInfo const*> wanted;
    bool one = false;
    for (auto const* info : all_rules()) {
        if (info->id == id) one = true;
        if (id.empty() || info->id == id || family(info->id) == id) wanted.push_back(info);
    }
    if (wanted.empty()) return {{}, "bankwright: " + unknown_rule(id) + "\n", ExitCode::unusable};
    if (format == Format::json) return {rules_json(wanted), {}, ExitCode::clean};
    return {one ? rule_text(*wanted.front()) : rules_text(wanted), {}, ExitCode::clean};
}
