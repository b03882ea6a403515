// Which findings does a caller want to see, and are there rules of the names that choose them?
#pragma once

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/rules/rule_names.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

inline bool selects(std::vector<std::string> const& chosen, std::string_view rule) {
    return std::any_of(chosen.begin(), chosen.end(),
                       [&](std::string const& choice) { return rule == choice || family(rule) == choice; });
}

// Throws std::invalid_argument, with the nearest name, for a word that chooses none.
inline void refuse_unknown_rules(std::vector<std::string> const& chosen) {
    for (auto const& word : chosen)
        if (auto const problem = unknown_rule(word); !problem.empty()) throw std::invalid_argument(problem);
}

} // namespace bankwright
