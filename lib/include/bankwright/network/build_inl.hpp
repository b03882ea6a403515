// Body of build.hpp.
#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/option_limits.hpp"
#include "bankwright/network/reference.hpp"
#include "bankwright/network/to_branches.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

namespace internal::building {

// The reader lets no such value pass; a program can state anything.
inline void refuse_unfit(Bank const& bank) {
    for (auto const& battery : bank.batteries)
        if (battery.charge && !charge_problem(*battery.charge).empty())
            refuse_if(charge_problem(*battery.charge), battery.id + ".charge", *battery.charge);
    for (auto const& motor : bank.motors)
        if (motor.throttle && !throttle_problem(*motor.throttle).empty())
            refuse_if(throttle_problem(*motor.throttle), motor.id + ".throttle", *motor.throttle);
}

} // namespace internal::building

BANKWRIGHT_INLINE Network build(Bank const& bank, Moment const& moment) {
    refuse_unfit(moment);
    internal::building::refuse_unfit(bank);
    Network network;
    network.terminals = terminals_of(bank);
    network.nodes.reserve(network.terminals.size());
    for (auto const& terminal : network.terminals)
        if (!network.nodes.emplace(terminal, static_cast<int>(network.nodes.size())).second)
            throw std::invalid_argument("two terminals are called `" + terminal + "`");
    // A circuit has a reference, so it has a node, even where the bank has no terminal.
    network.circuit.nodes = std::max(1, static_cast<int>(network.terminals.size()));

    Surroundings const around{moment,
                              bank.system.ambient,
                              bank.system.joint,
                              temperature_of_batteries(bank),
                              charging_voltage(bank, moment),
                              !bank.motors.empty()};
    std::vector<std::string_view> ids;
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        ids.push_back(id_of(part));
        network.parts.push_back({id_of(part), kind, to_branches(part, around, network)});
    });
    for (auto const& [line, post] : seats(bank))
        network.circuit.joins.push_back({node_of(network, post), node_of(network, line)});
    std::sort(ids.begin(), ids.end());
    if (auto const twice = std::adjacent_find(ids.begin(), ids.end()); twice != ids.end())
        throw std::invalid_argument("two parts are called `" + std::string(*twice) + "`");
    network.circuit.reference = negative_end(bank, network);
    return network;
}

} // namespace bankwright
