// Body of build.hpp.
#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/reference.hpp"
#include "bankwright/network/to_branches.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

BANKWRIGHT_INLINE Network build(Bank const& bank, Moment const& moment) {
    Network network;
    network.terminals = terminals_of(bank);
    network.nodes.reserve(network.terminals.size());
    for (auto const& terminal : network.terminals)
        if (!network.nodes.emplace(terminal, static_cast<int>(network.nodes.size())).second)
            throw std::invalid_argument("two terminals are called `" + terminal + "`");
    // A circuit has a reference, so it has a node, even where the bank has no terminal.
    network.circuit.nodes = std::max(1, static_cast<int>(network.terminals.size()));

    Surroundings const around{moment, bank.system.ambient, bank.system.joint, !bank.motors.empty()};
    std::vector<std::string_view> ids;
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        ids.push_back(id_of(part));
        network.parts.push_back({id_of(part), kind, to_branches(part, around, network)});
    });
    std::sort(ids.begin(), ids.end());
    if (auto const twice = std::adjacent_find(ids.begin(), ids.end()); twice != ids.end())
        throw std::invalid_argument("two parts are called `" + std::string(*twice) + "`");
    network.circuit.reference = negative_end(bank, network);
    return network;
}

} // namespace bankwright
