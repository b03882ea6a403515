#include "commands/rules.hpp"

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/reports/rule_reference.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/text/closest.hpp"
#include "bankwright/text/escape.hpp"

#include <vector>

using namespace bankwright;

namespace {

std::string unknown(std::string const& id) {
    std::vector<std::string_view> known;
    for (auto const* info : all_rules())
        known.push_back(info->id);
    auto const nearest = closest(id, known);
    return "bankwright: there is no rule or family `" + terminal_safe(id) + "`; " +
           (nearest ? "did you mean `" + *nearest + "`?" : "`bankwright rules` lists them all") + "\n";
}

} // namespace

Outcome run(RulesRequest const& request, bool) {
    std::vector<RuleInfo const*> wanted;
    bool one = false;
    for (auto const* info : all_rules()) {
        if (info->id == request.id) one = true;
        if (request.id.empty() || info->id == request.id || family(info->id) == request.id) wanted.push_back(info);
    }
    if (wanted.empty()) return {{}, unknown(request.id), ExitCode::unusable};
    if (request.format == Format::json) return {rules_json(wanted), {}, ExitCode::clean};
    return {one ? rule_text(*wanted.front()) : rules_text(wanted), {}, ExitCode::clean};
}
