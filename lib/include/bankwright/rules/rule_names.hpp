// Which words choose rules? Their ids, and the names of their families.
#pragma once

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/rules/catalog.hpp"

#include <algorithm>
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
    auto const known = rule_and_family_names();
    return std::find(known.begin(), known.end(), word) != known.end();
}

} // namespace bankwright
