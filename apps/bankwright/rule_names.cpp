#include "rule_names.hpp"

#include "bankwright/rules/rule_names.hpp"
#include "bankwright/text/closest.hpp"
#include "bankwright/text/escape.hpp"

using namespace bankwright;

std::string unknown_rule(std::string const& id) {
    if (names_rules(id)) return {};
    auto const nearest = closest(id, rule_and_family_names());
    return "there is no rule or family `" + terminal_safe(id) + "`; " +
           (nearest ? "did you mean `" + *nearest + "`?" : "`bankwright rules` lists them all");
}
