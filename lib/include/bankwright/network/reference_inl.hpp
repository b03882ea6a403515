// Body of reference.hpp.
#pragma once

#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/network/reference.hpp"

#include <cmath>
#include <cstddef>
#include <limits>
#include <queue>
#include <vector>

namespace bankwright {

namespace nominal_potentials {

struct Step {
    int to = 0;
    double rise = 0.0; // [V] nominal
};
using Steps = std::vector<std::vector<Step>>; // by node, in the author's order

inline Steps steps(Bank const& bank, Network const& network) {
    Steps steps(static_cast<std::size_t>(network.circuit.nodes));
    auto const add = [&](int from, int to, double rise) {
        steps[static_cast<std::size_t>(from)].push_back({to, rise});
        steps[static_cast<std::size_t>(to)].push_back({from, -rise});
    };
    std::size_t battery = 0;
    for (auto const& part : network.parts) {
        if (part.kind == PartKind::motor || part.kind == PartKind::load) continue;
        if (part.kind == PartKind::battery) {
            auto const& through = part.elements.front();
            add(through.from, through.to, nominal_voltage(bank.batteries[battery++]).value());
            continue;
        }
        for (auto const& element : part.elements)
            if (element.is == Element::Is::branch || element.is == Element::Is::join)
                add(element.from, element.to, 0.0);
    }
    return steps;
}

// Gives every node that can be reached from `start` its potential; the others keep theirs.
inline void carry(Steps const& steps, int start, std::vector<double>& potential) {
    potential[static_cast<std::size_t>(start)] = 0.0;
    std::queue<int> next;
    next.push(start);
    while (!next.empty()) {
        auto const node = static_cast<std::size_t>(next.front());
        next.pop();
        for (auto const& step : steps[node]) {
            auto& there = potential[static_cast<std::size_t>(step.to)];
            if (!std::isnan(there)) continue;
            there = potential[node] + step.rise;
            next.push(step.to);
        }
    }
}

} // namespace nominal_potentials

BANKWRIGHT_INLINE int negative_end(Bank const& bank, Network const& network) {
    auto const steps = nominal_potentials::steps(bank, network);
    double const unvisited = std::numeric_limits<double>::quiet_NaN();
    double const same = 1e-6; // [V] above the rounding of sums of nominal voltages, below any difference between them
    std::vector<double> potential(steps.size(), unvisited);
    std::vector<bool> counted(bank.batteries.size(), false);
    auto const negative = [&](std::size_t battery) { return network.parts[battery].elements.front().from; };

    int reference = 0;
    std::size_t most = 0;
    for (std::size_t first = 0; first < counted.size(); ++first) {
        if (counted[first]) continue;
        nominal_potentials::carry(steps, negative(first), potential);
        std::size_t batteries = 0;
        int lowest = negative(first);
        for (std::size_t battery = first; battery < counted.size(); ++battery) {
            auto const node = static_cast<std::size_t>(negative(battery));
            if (counted[battery] || std::isnan(potential[node])) continue;
            counted[battery] = true;
            ++batteries;
            if (potential[node] < potential[static_cast<std::size_t>(lowest)] - same) lowest = static_cast<int>(node);
        }
        if (batteries > most) {
            most = batteries;
            reference = lowest;
        }
    }
    return reference;
}

} // namespace bankwright
