#pragma once

#include "bankwright/analyses/main_leads.hpp"
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/graph/as_index.hpp"

#include <algorithm>
#include <cstddef>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

BANKWRIGHT_INLINE double worst_share(Bank const& bank, WiringGraph const& graph, Arrangement const& arrangement) {
    OperatingPointOptions options;
    options.moment.everything_closed = true;
    auto const point = operating_point(bank, options);
    if (point.status != solver::Status::solved || arrangement.strings.empty()) return 1.0;
    double total = 0.0;
    double most = 0.0;
    for (auto const& string : arrangement.strings) {
        auto const& id = graph.id(graph.edges[as_index(string.front())]);
        for (auto const& part : point.parts) {
            if (part.id != id) continue;
            total += part.current.value();
            most = std::max(most, part.current.value());
        }
    }
    return total > 0.0 ? most * static_cast<double>(arrangement.strings.size()) / total : 1.0;
}

namespace internal {

// The conductors that leave the bank: on an end post of a string, but no link to another string's.
inline std::vector<std::string*> lead_ends(Bank& bank, std::set<std::string> const& posts) {
    std::vector<std::string*> ends;
    for (auto* runs : {&bank.jumpers, &bank.cables})
        for (auto& run : *runs)
            if (posts.count(run.from) != posts.count(run.to))
                ends.push_back(posts.count(run.from) ? &run.from : &run.to);
    return ends;
}

} // namespace internal

BANKWRIGHT_INLINE MainLeads best_main_leads(Bank const& bank, WiringGraph const& graph,
                                            Arrangement const& arrangement) {
    MainLeads best;
    best.worst_share = worst_share(bank, graph, arrangement);
    std::set<std::string> tops;
    std::set<std::string> bottoms;
    for (auto const& string : arrangement.strings) {
        bottoms.insert(graph.name(graph.edges[as_index(string.front())].from));
        tops.insert(graph.name(graph.edges[as_index(string.back())].to));
    }
    auto trial = bank;
    auto const positive_ends = internal::lead_ends(trial, tops);
    auto const negative_ends = internal::lead_ends(trial, bottoms);
    if (positive_ends.size() != 1 || negative_ends.size() != 1) return best; // busbars, or several loads: no one choice
    for (auto const& top : tops) {
        for (auto const& bottom : bottoms) {
            *positive_ends.front() = top;
            *negative_ends.front() = bottom;
            auto const share = worst_share(trial, graph, arrangement);
            if (share < best.worst_share - 1e-9) best = {top, bottom, share};
        }
    }
    return best;
}

} // namespace bankwright
