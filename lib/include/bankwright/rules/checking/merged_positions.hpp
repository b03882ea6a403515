// One list of findings of what was found in each position of a bank's selectors and relays: what holds in all of them
// is said once, the rest where it is worst, with the position.
#pragma once

#include "bankwright/analyses/positions.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/rule_id.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace bankwright::internal {

inline double beyond(Finding const& finding) {
    if (!finding.found || !finding.allowed || *finding.allowed == 0.0) return 0.0;
    return std::abs(*finding.found / *finding.allowed - 1.0);
}

// Batteries that a switch can part are matched only where it joins them, and that is a warning.
inline bool spans_banks(Bank const& bank, std::vector<int> const& separable, Finding const& finding) {
    auto const of = family(finding.rule);
    if (of != "matching" && of != "sharing") return false;
    int seen = -1;
    for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
        auto const& parts = finding.parts;
        if (std::find(parts.begin(), parts.end(), bank.batteries[b].id) == parts.end()) continue;
        if (seen >= 0 && separable[b] != seen) return true;
        seen = separable[b];
    }
    return false;
}

inline Findings merged_positions(Bank const& bank, std::vector<SwitchPosition> const& positions,
                                 std::vector<Findings> const& found) {
    if (positions.size() == 1) return found.front();
    struct Place {
        std::size_t position = 0, index = 0;
    };
    using Name = std::tuple<std::string, std::string, std::string>; // rule, first part, key
    std::map<Name, std::vector<Place>> places;
    std::vector<Name> order;
    for (std::size_t p = 0; p < found.size(); ++p)
        for (std::size_t f = 0; f < found[p].size(); ++f) {
            auto const& finding = found[p][f];
            Name const name{finding.rule, finding.parts.empty() ? std::string() : finding.parts.front(), finding.key};
            auto& at = places[name];
            if (at.empty()) order.push_back(name);
            at.push_back({p, f});
        }
    auto const separable = separable_banks(bank);
    Findings merged;
    for (auto const& name : order) {
        auto const& at = places[name];
        auto const of = [&](Place const& place) -> Finding const& { return found[place.position][place.index]; };
        auto const worst = *std::max_element(at.begin(), at.end(), [&](auto const& a, auto const& b) {
            return std::pair(of(a).level, beyond(of(a))) < std::pair(of(b).level, beyond(of(b)));
        });
        auto finding = of(worst);
        // A wiring is judged with everything closed: only its numbers differ.
        bool const alike = family(finding.rule) == "wiring" || std::all_of(at.begin(), at.end(), [&](auto const& a) {
                               return of(a).message == finding.message;
                           });
        bool const everywhere = at.size() == positions.size() && alike;
        if (!everywhere) finding.message = positions[worst.position].words + ", " + finding.message;
        if (spans_banks(bank, separable, finding)) {
            finding.level = std::min(finding.level, Level::warning);
            finding.help = "join them only when you mean to, and separate them afterward; or " + finding.help;
        }
        merged.push_back(std::move(finding));
    }
    return merged;
}

} // namespace bankwright::internal
