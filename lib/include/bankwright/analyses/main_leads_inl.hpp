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

namespace internal::landing {

// [A] of each string in the operating point as described; empty where there is none.
inline std::vector<double> string_currents(Bank const& bank, WiringGraph const& graph, Arrangement const& arrangement) {
    OperatingPointOptions options;
    options.moment.everything_closed = true;
    auto const point = operating_point(bank, options);
    std::vector<double> amps;
    if (point.status != solver::Status::solved) return amps;
    for (auto const& string : arrangement.strings) {
        auto const& id = graph.id(graph.edges[as_index(string.front())]);
        for (auto const& part : point.parts)
            if (part.id == id) amps.push_back(part.current.value());
    }
    return amps;
}

inline double busiest(std::vector<double> const& amps) {
    double total = 0.0, most = 0.0;
    for (auto const current : amps) {
        total += current;
        most = std::max(most, current);
    }
    return total > 0.0 ? most * static_cast<double>(amps.size()) / total : 1.0;
}

// The conductors that leave the bank: on an end post of a string, but no link to another string's.
inline std::vector<std::string*> lead_ends(Bank& bank, std::set<std::string> const& posts) {
    std::vector<std::string*> ends;
    for (auto* runs : {&bank.jumpers, &bank.cables})
        for (auto& run : *runs)
            if (posts.count(run.from) != posts.count(run.to))
                ends.push_back(posts.count(run.from) ? &run.from : &run.to);
    return ends;
}

struct Pair {
    std::size_t top = 0, bottom = 0;
};

// Which pairs are worth solving? Batteries and copper are linear: a lead that moves on one side adds the same to every
// string's current wherever the other lead is, but for what the load's own current changes by. So that one solution for
// each post tells all pairs nearly, and only the best of those are solved, in the posts' order. Few pairs are all
// solved.
template <class Currents>
std::vector<Pair> promising(std::size_t tops, std::size_t bottoms, Currents const& currents) {
    constexpr std::size_t all_of = 36, most = 16;
    std::vector<Pair> pairs;
    for (std::size_t top = 0; top < tops; ++top)
        for (std::size_t bottom = 0; bottom < bottoms; ++bottom)
            pairs.push_back({top, bottom});
    if (pairs.size() <= all_of) return pairs;
    std::vector<std::vector<double>> by_top, by_bottom;
    for (std::size_t top = 0; top < tops; ++top)
        by_top.push_back(currents({top, 0}));
    for (std::size_t bottom = 0; bottom < bottoms; ++bottom)
        by_bottom.push_back(bottom == 0 ? by_top.front() : currents({0, bottom}));
    std::vector<std::pair<double, std::size_t>> ranked; // share, pair
    std::vector<double> amps;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        auto const& one = by_top[pairs[i].top];
        auto const& other = by_bottom[pairs[i].bottom];
        auto const& both = by_top.front();
        if (one.empty() || one.size() != other.size() || one.size() != both.size()) continue;
        amps.resize(one.size());
        for (std::size_t s = 0; s < amps.size(); ++s)
            amps[s] = one[s] + other[s] - both[s];
        ranked.emplace_back(busiest(amps), i);
    }
    auto const kept = std::min(most, ranked.size());
    std::partial_sort(ranked.begin(), ranked.begin() + static_cast<std::ptrdiff_t>(kept), ranked.end());
    ranked.resize(kept);
    std::sort(ranked.begin(), ranked.end(), [](auto const& a, auto const& b) { return a.second < b.second; });
    std::vector<Pair> best;
    for (auto const& [share, i] : ranked)
        best.push_back(pairs[i]);
    return best;
}

} // namespace internal::landing

BANKWRIGHT_INLINE double worst_share(Bank const& bank, WiringGraph const& graph, Arrangement const& arrangement) {
    return internal::landing::busiest(internal::landing::string_currents(bank, graph, arrangement));
}

BANKWRIGHT_INLINE MainLeads best_main_leads(Bank const& bank, WiringGraph const& graph,
                                            Arrangement const& arrangement) {
    using namespace internal::landing;
    MainLeads best;
    best.worst_share = worst_share(bank, graph, arrangement);
    std::set<std::string> tops;
    std::set<std::string> bottoms;
    for (auto const& string : arrangement.strings) {
        bottoms.insert(graph.name(graph.edges[as_index(string.front())].from));
        tops.insert(graph.name(graph.edges[as_index(string.back())].to));
    }
    auto trial = bank;
    auto const positive_ends = lead_ends(trial, tops);
    auto const negative_ends = lead_ends(trial, bottoms);
    if (positive_ends.size() != 1 || negative_ends.size() != 1) return best; // busbars, or several loads: no one choice
    std::vector<std::string> const top(tops.begin(), tops.end()), bottom(bottoms.begin(), bottoms.end());
    auto const currents = [&](Pair const& pair) {
        *positive_ends.front() = top[pair.top];
        *negative_ends.front() = bottom[pair.bottom];
        return string_currents(trial, graph, arrangement);
    };
    for (auto const& pair : promising(top.size(), bottom.size(), currents)) {
        auto const share = busiest(currents(pair));
        if (share < best.worst_share - 1e-9) best = {top[pair.top], bottom[pair.bottom], share};
    }
    return best;
}

} // namespace bankwright
