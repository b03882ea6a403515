#pragma once

#include "bankwright/reports/rule_reference.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace bankwright {

BANKWRIGHT_INLINE std::string rules_text(std::vector<RuleInfo const*> const& rules) {
    std::size_t widest = 0;
    for (auto const* rule : rules)
        widest = std::max(widest, rule->id.size());
    std::string out;
    for (auto const* rule : rules)
        out += fmt::format("{:<{}}  {:<7}  {}\n", rule->id, widest, name(rule->level), rule->what);
    return out;
}

BANKWRIGHT_INLINE std::string rule_text(RuleInfo const& rule) {
    return fmt::format("{} ({}, since {})\n\n"
                       "looks for:  {}\n"
                       "because:    {}\n"
                       "what to do: {}\n"
                       "source:     {}\n",
                       rule.id, name(rule.level), rule.since, rule.what, rule.why, rule.fix, rule.source);
}

BANKWRIGHT_INLINE std::string rules_json(std::vector<RuleInfo const*> const& rules) {
    nlohmann::ordered_json document{
        {"bankwright", "rules"}, {"version", 1}, {"rules", nlohmann::ordered_json::array()}};
    for (auto const* rule : rules) {
        document["rules"].push_back({{"id", rule->id},
                                     {"level", name(rule->level)},
                                     {"since", rule->since},
                                     {"what", rule->what},
                                     {"why", rule->why},
                                     {"fix", rule->fix},
                                     {"source", rule->source}});
    }
    return document.dump(2) + '\n';
}

} // namespace bankwright
