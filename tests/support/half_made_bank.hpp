// A bank as it stands in the middle of a hook-up, by the public door only: what is not landed is not in it, what is not
// closed is open, and a mistake is made in the bank itself. Solved by the slow solver, with every load and charger off.
#pragma once

#include "bankwright/analyses/hookup.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/network/build.hpp"
#include "reference/slow_solver.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace bankwright::support {

// With these conductors landed and these devices closed or mated alone.
inline Bank half_made(Bank bank, std::set<std::string> const& made) {
    auto const missing = [&](auto const& part) { return made.count(id_of(part)) == 0; };
    for (auto* runs : {&bank.jumpers, &bank.cables})
        runs->erase(std::remove_if(runs->begin(), runs->end(), missing), runs->end());
    for (auto* devices : {&bank.breakers, &bank.fuses})
        for (auto& device : *devices)
            if (missing(device)) device.closed = false;
    for (auto& device : bank.switches)
        if (missing(device)) device.closed = false;
    for (auto& relay : bank.relays)
        if (missing(relay)) relay.closed = false;
    for (auto& selector : bank.selectors)
        if (missing(selector)) selector.position = SelectorPosition::off;
    for (auto& connector : bank.connectors)
        if (missing(connector)) connector.mated = false;
    return bank;
}

struct DenseReading {
    Network network;
    slow::Answer answer;
    std::vector<int> at; // by node of the network: node of the answer

    std::optional<double> between(std::string const& red, std::string const& black) const {
        auto const r = static_cast<std::size_t>(at[static_cast<std::size_t>(node_of(network, red))]);
        auto const b = static_cast<std::size_t>(at[static_cast<std::size_t>(node_of(network, black))]);
        if (answer.group[r] != answer.group[b]) return std::nullopt;
        return static_cast<double>(answer.volts[r] - answer.volts[b]);
    }
    // [A] of a part that became one branch; none of one that became a join or a gap.
    std::optional<double> amperes(std::string const& part) const {
        auto const& element = part_of(network, part).elements.front();
        if (element.is != Element::Is::branch) return std::nullopt;
        return static_cast<double>(answer.branch_amps[static_cast<std::size_t>(element.index)]);
    }
    double largest_current() const {
        double largest = 0.0;
        for (auto const amps : answer.branch_amps)
            largest = std::max(largest, std::abs(static_cast<double>(amps)));
        return largest;
    }
};

// Nodes on which nothing is landed are left out of the dense matrix, all but those asked for: they float.
inline DenseReading solve_densely(Bank const& bank) {
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    moment.chargers = false;
    DenseReading reading{build(bank, moment), {}, {}};
    auto circuit = reading.network.circuit;
    std::vector<char> touched(static_cast<std::size_t>(circuit.nodes), 0);
    auto const touch = [&](auto const& element) {
        touched[static_cast<std::size_t>(element.from)] = touched[static_cast<std::size_t>(element.to)] = 1;
    };
    for (auto const& branch : circuit.branches)
        touch(branch);
    for (auto const& join : circuit.joins)
        touch(join);
    touched[static_cast<std::size_t>(circuit.reference)] = 1;
    int kept = 0;
    for (auto const used : touched)
        reading.at.push_back(used ? kept++ : -1);
    auto const move = [&](int& node) { node = reading.at[static_cast<std::size_t>(node)]; };
    for (auto& branch : circuit.branches)
        move(branch.from), move(branch.to);
    for (auto& join : circuit.joins)
        move(join.from), move(join.to);
    move(circuit.reference);
    circuit.nodes = kept;
    reading.answer = slow::solve(circuit);
    for (auto& at : reading.at) { // each on an island of its own
        if (at >= 0) continue;
        at = static_cast<int>(reading.answer.group.size());
        reading.answer.group.push_back(at);
        reading.answer.volts.push_back(0);
    }
    return reading;
}

inline void exchange_landings(Bank& bank, std::string const& one, std::string const& other) {
    for (auto* runs : {&bank.jumpers, &bank.cables})
        for (auto& run : *runs)
            for (auto* end : {&run.from, &run.to})
                if (*end == one)
                    *end = other;
                else if (*end == other)
                    *end = one;
}

// The same bank with the mistake made. A battery that is turned has its posts where each other's should be: conductors
// and probes find the other one, so `red` and `black` change too.
inline void make_mistake(Bank& bank, Mistake const& mistake, std::string& red, std::string& black) {
    auto const plus = mistake.part + "+";
    auto const minus = mistake.part + "-";
    switch (mistake.kind) {
    case MistakeKind::battery_turned:
        exchange_landings(bank, plus, minus);
        for (auto* probe : {&red, &black})
            *probe = *probe == plus ? minus : *probe == minus ? plus : *probe;
        return;
    case MistakeKind::battery_low:
    case MistakeKind::cell_dead:
        for (auto& battery : bank.batteries) {
            if (battery.id != mistake.part) continue;
            if (mistake.kind == MistakeKind::battery_low) {
                battery.emf.reset();
                battery.charge = StateOfCharge::percent(20.0);
            } else if (battery.emf) {
                auto const living = cell_count(battery) - battery.dead_cells.value_or(0);
                battery.emf = *battery.emf * static_cast<double>(living - 1) / static_cast<double>(living);
            } else {
                battery.dead_cells = battery.dead_cells.value_or(0) + 1;
            }
        }
        return;
    case MistakeKind::end_elsewhere:
        for (auto* runs : {&bank.jumpers, &bank.cables})
            for (auto& run : *runs)
                if (run.conductor.id == mistake.part) (run.from == mistake.at ? run.from : run.to) = mistake.onto;
        return;
    case MistakeKind::leads_exchanged:
        exchange_landings(bank, mistake.at, mistake.onto);
        return;
    case MistakeKind::not_joined: // a sheet warns of none of these
    case MistakeKind::bypassed:
    case MistakeKind::across:
        return;
    }
}

} // namespace bankwright::support
