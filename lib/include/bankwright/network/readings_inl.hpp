// Bodies of readings.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/readings.hpp"

#include <cmath>
#include <cstddef>
#include <limits>

namespace bankwright {

namespace internal::meters {

// A meter that shows nothing shows no sign: -0 becomes 0.
inline double unsigned_zero(double value) { return value == 0.0 ? 0.0 : value; }

// [A] from Element::from to Element::to
inline double amperes(Element const& element, solver::Solution const& solution) {
    auto const index = as_index(element.index);
    switch (element.is) {
    case Element::Is::gap:
        return 0.0;
    case Element::Is::branch:
        return solution.branch_amps[index];
    case Element::Is::join:
        return solution.join_amps[index];
    case Element::Is::load:
        return solution.load_amps[index];
    }
    return 0.0;
}

// [V] of Element::from against Element::to
inline double drop(Element const& element, solver::Solution const& solution) {
    auto const from = as_index(element.from);
    auto const to = as_index(element.to);
    if (solution.island[from] != solution.island[to]) return std::numeric_limits<double>::quiet_NaN();
    return solution.volts[from] - solution.volts[to];
}

// [W] taken; nothing flows, nothing is taken, whatever the voltage
inline double watts_taken(Element const& element, solver::Solution const& solution) {
    double const current = amperes(element, solution);
    return current == 0.0 ? 0.0 : drop(element, solution) * current;
}

// [A] half of what the conductors landed on a node carry
inline double through(int node, Network const& network, solver::Solution const& solution) {
    double sum = 0.0;
    for (auto const& part : network.parts) {
        if (part.kind != PartKind::jumper && part.kind != PartKind::cable) continue;
        auto const& run = part.elements.front();
        if (run.from != run.to && (run.from == node || run.to == node)) sum += std::abs(amperes(run, solution));
    }
    return sum / 2.0;
}

} // namespace internal::meters

BANKWRIGHT_INLINE PartReading read_part(NetworkPart const& part, Network const& network,
                                        solver::Solution const& solution) {
    using namespace internal::meters;
    auto const& first = part.elements.front();
    double current = amperes(first, solution);
    double voltage = drop(first, solution);
    double power = watts_taken(first, solution);
    switch (part.kind) {
    case PartKind::battery: // its element runs from minus to plus
        voltage = -voltage;
        power = -power;
        break;
    case PartKind::busbar:
        current = through(first.from, network, solution);
        break;
    case PartKind::selector: { // what its common carries
        auto const& second = part.elements.back();
        current += amperes(second, solution);
        if (first.is == Element::Is::gap && second.is != Element::Is::gap) voltage = drop(second, solution);
        break;
    }
    case PartKind::converter: // what its output gives; its power is what is lost in it
        current = amperes(part.elements[1], solution);
        voltage = drop(part.elements[1], solution);
        power += watts_taken(part.elements[1], solution);
        break;
    case PartKind::connector:
        power += watts_taken(part.elements.back(), solution);
        break;
    case PartKind::charger: {
        double outputs = 0.0;
        current = voltage = power = 0.0;
        for (auto const& output : part.elements) {
            if (output.is == Element::Is::join) continue; // of its negatives
            outputs += 1.0;
            current += amperes(output, solution);
            voltage += drop(output, solution);
            power += watts_taken(output, solution);
        }
        voltage /= outputs;
        break;
    }
    case PartKind::jumper:
    case PartKind::cable:
    case PartKind::breaker:
    case PartKind::fuse:
    case PartKind::switch_:
    case PartKind::shunt:
    case PartKind::relay:
    case PartKind::motor:
    case PartKind::load:
        break;
    }
    return {part.id, part.kind, unsigned_zero(current) * si::ampere, unsigned_zero(voltage) * si::volt,
            unsigned_zero(power) * si::watt};
}

BANKWRIGHT_INLINE std::vector<PartReading> read_parts(Network const& network, solver::Solution const& solution) {
    std::vector<PartReading> readings;
    if (solution.status != solver::Status::solved) return readings;
    for (auto const& part : network.parts)
        if (!part.elements.empty()) readings.push_back(read_part(part, network, solution));
    return readings;
}

BANKWRIGHT_INLINE std::vector<TerminalReading> read_terminals(Network const& network,
                                                              solver::Solution const& solution) {
    std::vector<TerminalReading> readings;
    for (std::size_t node = 0; node < network.terminals.size(); ++node) {
        bool const known = solution.status == solver::Status::solved && solution.island[node] == 0;
        readings.push_back({network.terminals[node], std::nullopt});
        if (known) readings.back().voltage = internal::meters::unsigned_zero(solution.volts[node]) * si::volt;
    }
    return readings;
}

} // namespace bankwright
