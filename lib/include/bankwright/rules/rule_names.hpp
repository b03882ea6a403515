// Which words choose rules? Their ids, and the names of their families.
#pragma once

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/text/closest.hpp"
#include "bankwright/text/escape.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

inline std::vector<std::string_view> rule_and_family_names() {
    std::vector<std::string_view> names;
    for (auto const* info : all_rules()) {
        names.push_back(info->id);
        names.push_back(family(info->id));
    }
    return names;
}

inline bool names_rules(std::string_view word) {
    return std::any_of(rule_families.begin(), rule_families.end(), [&](RuleFamily const& family) {
        return family.name == word || std::any_of(family.rules.begin(), family.rules.end(),
                                                  [&](RuleInfo const& rule) { return rule.id == word; });
    });
}

// What is wrong with a word that should choose rules, with the nearest that does; empty if it does.
inline std::string unknown_rule(std::string_view word) {
    if (names_rules(word)) return {};
    auto const nearest = closest(word, rule_and_family_names());
    return "there is no rule or family `" + terminal_safe(word) + "`; " +
           (nearest ? "did you mean `" + *nearest + "`?" : "`bankwright rules` lists them all");
}

} // namespace bankwright
