#include "commands/rule_names.hpp"

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/text/closest.hpp"
#include "bankwright/text/escape.hpp"

#include <string_view>
#include <vector>

using namespace bankwright;

std::string unknown_rule(std::string const& id) {
    std::vector<std::string_view> known;
    for (auto const* info : all_rules()) {
        if (info->id == id || family(info->id) == id) return {};
        known.push_back(info->id);
        known.push_back(family(info->id));
    }
    auto const nearest = closest(id, known);
    return "there is no rule or family `" + terminal_safe(id) + "`; " +
           (nearest ? "did you mean `" + *nearest + "`?" : "`bankwright rules` lists them all");
}
