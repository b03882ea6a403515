// Which rules does a caller want to be told of, which are left out, and are there rules of the names that choose them?
#pragma once

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/rules/catalog.hpp"
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

// `Options` has `only`, empty for all, and `skip`, as CheckOptions does.
template <class Options>
bool is_wanted(Options const& options, std::string_view rule) {
    return (options.only.empty() || selects(options.only, rule)) && !selects(options.skip, rule);
}

// In the catalog's order; a family once where none of its rules is wanted. What the reader finds is always told: of its
// family a caller can leave out only what is said of acceptances.
template <class Options>
std::vector<std::string> names_left_out(Options const& options) {
    constexpr std::string_view acceptance = "file/accept-unused";
    std::vector<std::string> names;
    for (auto const& family : rule_families) {
        std::vector<std::string> here;
        for (auto const& rule : family.rules)
            if (family.check ? !is_wanted(options, rule.id) : rule.id == acceptance && selects(options.skip, rule.id))
                here.emplace_back(rule.id);
        if (here.size() == family.rules.size()) here.assign(1, std::string(family.name));
        names.insert(names.end(), here.begin(), here.end());
    }
    return names;
}

// Throws std::invalid_argument, with the nearest name, for a word that chooses none.
inline void refuse_unknown_rules(std::vector<std::string> const& chosen) {
    for (auto const& word : chosen)
        if (auto const problem = unknown_rule(word); !problem.empty()) throw std::invalid_argument(problem);
}

} // namespace bankwright
