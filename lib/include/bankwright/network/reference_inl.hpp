// Body of reference.hpp.
#pragma once

#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/edges_at.hpp"
#include "bankwright/network/reference.hpp"

#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>
#include <vector>

namespace bankwright {

namespace internal::nominal_potentials {

struct Step {
    int from = 0;
    int to = 0;
    double rise = 0.0; // [V] nominal
};

// In the author's order.
inline std::vector<Step> steps(Bank const& bank, Network const& network) {
    std::vector<Step> steps;
    std::size_t battery = 0;
    for (auto const& part : network.parts) {
        if (part.kind == PartKind::motor || part.kind == PartKind::load) continue;
        if (part.kind == PartKind::battery) {
            auto const& through = part.elements.front();
            steps.push_back({through.from, through.to, nominal_voltage(bank.batteries[battery++]).value()});
            continue;
        }
        for (auto const& element : part.elements)
            if (element.is == Element::Is::branch || element.is == Element::Is::join)
                steps.push_back({element.from, element.to, 0.0});
    }
    return steps;
}

// Gives every node that can be reached from `start` its potential; the others keep theirs.
inline void carry(std::vector<Step> const& steps, solver::EdgesAt const& steps_at, int start,
                  std::vector<double>& potential) {
    potential[as_index(start)] = 0.0;
    std::vector<int> reached{start};
    for (std::size_t head = 0; head < reached.size(); ++head) {
        auto const node = reached[head];
        for (auto const s : steps_at[node]) {
            auto const& step = steps[as_index(s)];
            bool const forward = step.from == node;
            auto& there = potential[as_index(forward ? step.to : step.from)];
            if (!std::isnan(there)) continue;
            there = potential[as_index(node)] + (forward ? step.rise : -step.rise);
            reached.push_back(forward ? step.to : step.from);
        }
    }
}

} // namespace internal::nominal_potentials

BANKWRIGHT_INLINE int negative_end(Bank const& bank, Network const& network) {
    auto const steps = internal::nominal_potentials::steps(bank, network);
    auto const nodes = as_index(network.circuit.nodes);
    solver::EdgesAt const steps_at(nodes, steps.size(),
                                   [&](std::size_t s) { return std::pair(steps[s].from, steps[s].to); });
    double const unvisited = std::numeric_limits<double>::quiet_NaN();
    double const same = 1e-6; // [V] above the rounding of sums of nominal voltages, below any difference between them
    std::vector<double> potential(nodes, unvisited);
    std::vector<bool> counted(bank.batteries.size(), false);
    auto const negative = [&](std::size_t battery) { return network.parts[battery].elements.front().from; };

    int reference = 0;
    std::size_t most = 0;
    for (std::size_t first = 0; first < counted.size(); ++first) {
        if (counted[first]) continue;
        internal::nominal_potentials::carry(steps, steps_at, negative(first), potential);
        std::size_t batteries = 0;
        int lowest = negative(first);
        for (std::size_t battery = first; battery < counted.size(); ++battery) {
            auto const node = as_index(negative(battery));
            if (counted[battery] || std::isnan(potential[node])) continue;
            counted[battery] = true;
            ++batteries;
            if (potential[node] < potential[as_index(lowest)] - same) lowest = static_cast<int>(node);
        }
        if (batteries > most) {
            most = batteries;
            reference = lowest;
        }
    }
    return reference;
}

} // namespace bankwright
