// Body of short_places.hpp.
#pragma once

#include "bankwright/analyses/short_circuit/short_places.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/solve.hpp"

#include <cmath>
#include <cstddef>
#include <set>
#include <unordered_map>

namespace bankwright {

BANKWRIGHT_INLINE std::vector<TerminalPair> short_places(Bank const& bank, Voltage least) {
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    moment.everything_closed = true;
    moment.chargers = false;
    auto const network = build(bank, moment);
    auto const solution = solver::solve(network.circuit);
    std::vector<TerminalPair> places;
    if (solution.status != solver::Status::solved) return places;

    std::set<std::string> used; // by a conductor, or of a device or load
    for (auto const* runs : {&bank.jumpers, &bank.cables})
        for (auto const& run : *runs)
            used.insert({run.from, run.to});
    std::unordered_map<std::string, std::string> partner; // + to - of one part
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        if (kind == PartKind::battery || kind == PartKind::busbar) return;
        auto const names = terminals_of(part);
        used.insert(names.begin(), names.end());
        if (kind == PartKind::breaker || kind == PartKind::fuse || kind == PartKind::switch_ ||
            kind == PartKind::shunt || kind == PartKind::relay || kind == PartKind::selector)
            return;
        for (std::size_t n = 0; n + 1 < names.size(); n += 2)
            partner.emplace(names[n], names[n + 1]);
    });
    std::unordered_map<int, int> lowest; // by island: node
    for (auto const& battery : bank.batteries) {
        auto const post = node_of(network, battery.id + "-");
        auto const [it, is_new] = lowest.emplace(solution.island[as_index(post)], post);
        if (!is_new && solution.volts[as_index(post)] < solution.volts[as_index(it->second)]) it->second = post;
    }
    if (auto const home = lowest.find(0); home != lowest.end()) home->second = network.circuit.reference;

    for (auto const& terminal : network.terminals) {
        if (!used.count(terminal)) continue;
        auto const node = node_of(network, terminal);
        auto const own = partner.find(terminal);
        auto const low = lowest.find(solution.island[as_index(node)]);
        int against = -1;
        if (own != partner.end())
            against = node_of(network, own->second);
        else if (low != lowest.end())
            against = low->second;
        if (against < 0 || solution.island[as_index(node)] != solution.island[as_index(against)]) continue;
        auto const volts = solution.volts[as_index(node)] - solution.volts[as_index(against)];
        if (std::abs(volts) < least.value()) continue;
        places.push_back({terminal, network.terminals[as_index(against)], volts * si::volt});
    }
    return places;
}

} // namespace bankwright
