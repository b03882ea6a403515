// Bodies of expected_readings.hpp.
#pragma once

#include "bankwright/analyses/trace/expected_readings.hpp"
#include "bankwright/analyses/trace/meter_spread.hpp"
#include "bankwright/analyses/trace/starved_loads.hpp"
#include "bankwright/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

namespace bankwright {

BANKWRIGHT_INLINE double emf_of_doubt(std::size_t element, solver::Branch const& branch, double amperes,
                                      PartSpread const& spread, std::vector<PartDoubt> const& doubts) {
    double volts = branch.emf * spread.emf, ohms = branch.resistance * spread.resistance;
    for (auto const& doubt : doubts) {
        if (element != doubt.element) continue;
        volts = std::hypot(volts, doubt.volts);
        ohms = std::hypot(ohms, doubt.ohms);
    }
    double const all = std::hypot(volts, amperes * ohms);
    return all >= internal::expecting::negligible_volts ? all : 0.0;
}

BANKWRIGHT_INLINE ExpectedReadings::ExpectedReadings(FaultyWiring const& wiring, PartSpread const& spread,
                                                     std::vector<PartDoubt> const& doubts) {
    auto circuit = wiring.circuit;
    int const limit = solver::SolveOptions{}.star_mesh_limit;
    auto const topology = solver::with_plan(solver::topology(circuit), limit); // all networks are of one wiring
    auto solution = solver::solve(circuit, topology);
    auto const starved = internal::expecting::soften_starved(wiring, solution, circuit);
    if (std::find(starved.begin(), starved.end(), 1) != starved.end()) solution = solver::solve(circuit, topology);
    elements_ = wiring.elements;
    solved_ = solution.status == solver::Status::solved;
    island_ = topology.island;
    volts_ = solution.volts;
    volts_.resize(static_cast<std::size_t>(circuit.nodes));
    merged_ = topology.merged;
    branches_ = circuit.branches;
    branch_amps_ = solution.branch_amps;
    join_amps_ = solution.join_amps;
    load_amps_ = solution.load_amps;
    if (!solved_) return;

    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    std::vector<double> siemens(topology.lines.size(), 0.0);
    for (std::size_t b = 0; b < circuit.branches.size(); ++b)
        if (topology.branch_line[b] >= 0) siemens[at(topology.branch_line[b])] = 1.0 / circuit.branches[b].resistance;
    for (std::size_t l = 0; l < circuit.loads.size(); ++l)
        if (topology.load_line[l] >= 0)
            siemens[at(topology.load_line[l])] = internal::expecting::follow(circuit.loads[l].law, load_amps_[l]);
    network_.emplace(topology, siemens, limit);

    for (std::size_t e = 0; e < elements_.size(); ++e) {
        auto const& element = elements_[e];
        if (element.is == Element::Is::load && starved[at(element.index)]) {
            auto const& load = circuit.loads[at(element.index)];
            be_unsure({e, load.plus, load.minus,
                       internal::expecting::doubt_of_starved * std::abs(load_amps_[at(element.index)])});
        }
        if (element.is != Element::Is::branch || topology.branch_line[at(element.index)] < 0) continue;
        auto const& branch = circuit.branches[at(element.index)];
        double const volts = emf_of_doubt(e, branch, branch_amps_[at(element.index)], spread, doubts);
        if (volts > 0.0) be_unsure({e, branch.from, branch.to, volts / branch.resistance});
    }
}

BANKWRIGHT_INLINE void ExpectedReadings::be_unsure(Unsure const& one) {
    unsure_.push_back(one);
    unsure_elements_.push_back(one.element);
}

BANKWRIGHT_INLINE std::vector<double> ExpectedReadings::moved(std::vector<double> const& response) const {
    std::vector<double> sensitivities(elements_.size(), 0.0);
    for (auto const& one : unsure_)
        sensitivities[one.element] = (response[merged(one.to)] - response[merged(one.from)]) * one.amps;
    return sensitivities;
}

BANKWRIGHT_INLINE double ExpectedReadings::largest_battery_amps() const {
    double largest = 0.0;
    for (std::size_t b = 0; b < branch_amps_.size(); ++b)
        if (branches_[b].emf != 0.0) largest = std::max(largest, std::abs(branch_amps_[b]));
    return largest;
}

BANKWRIGHT_INLINE std::size_t ExpectedReadings::bytes() const {
    return sizeof(*this) + elements_.size() * sizeof(Element) + branches_.size() * sizeof(solver::Branch) +
           (40 * volts_.size() + 3 * branches_.size()) * sizeof(double) +
           unsure_.size() * (sizeof(Unsure) + volts_.size() * sizeof(double));
}

BANKWRIGHT_INLINE double ExpectedReadings::volts(int red, int black) const {
    if (!solved_ || !together(red, black)) return 0.0;
    return volts_[static_cast<std::size_t>(red)] - volts_[static_cast<std::size_t>(black)];
}

BANKWRIGHT_INLINE ExpectedReading ExpectedReadings::volts_reading(int red, int black) const {
    ExpectedReading reading{volts(red, black), std::vector<double>(elements_.size(), 0.0), 0.0};
    if (!solved_) {
        reading.own_spread = internal::expecting::unsolved_volts;
    } else if (!together(red, black)) {
        reading.own_spread = internal::expecting::floating_volts;
    } else {
        std::vector<double> amps(network_->nodes(), 0.0);
        amps[merged(red)] += 1.0;
        amps[merged(black)] -= 1.0;
        reading.sensitivities = moved(network_->volts_of_injections(amps));
    }
    return reading;
}

BANKWRIGHT_INLINE std::vector<double> const& ExpectedReadings::node_sensitivities() {
    if (!solved_ || !node_sensitivities_.empty()) return node_sensitivities_;
    auto const nodes = network_->nodes(), many = unsure_.size();
    node_sensitivities_.resize(nodes * many);
    std::vector<double> amps(nodes, 0.0);
    for (std::size_t n = 0; n < nodes; ++n) {
        amps[n] = 1.0;
        auto const response = network_->volts_of_injections(amps);
        amps[n] = 0.0;
        for (std::size_t u = 0; u < many; ++u)
            node_sensitivities_[n * many + u] =
                (response[merged(unsure_[u].to)] - response[merged(unsure_[u].from)]) * unsure_[u].amps;
    }
    return node_sensitivities_;
}

BANKWRIGHT_INLINE ExpectedReading ExpectedReadings::amps_reading(std::size_t number) const {
    auto const& element = elements_[number];
    ExpectedReading reading{0.0, std::vector<double>(elements_.size(), 0.0), 0.0};
    auto const index = static_cast<std::size_t>(element.index);
    if (!solved_) {
        reading.own_spread = 1e3; // [A] anything
        return reading;
    }
    switch (element.is) {
    case Element::Is::gap:
        break;
    case Element::Is::load:
        reading.mean = load_amps_[index];
        reading.own_spread = 0.1 * std::abs(reading.mean); // [from memory] nameplates are no better
        break;
    case Element::Is::join: // how rings of ideal joins share is not known
        reading.mean = join_amps_[index];
        reading.own_spread = 0.2 * std::abs(reading.mean);
        break;
    case Element::Is::branch: {
        auto const& branch = branches_[index];
        reading.mean = branch_amps_[index];
        reading.sensitivities = volts_reading(branch.from, branch.to).sensitivities;
        for (auto const& one : unsure_)
            if (one.element == number) reading.sensitivities[number] += one.amps * branch.resistance;
        for (double& sensitivity : reading.sensitivities)
            sensitivity /= branch.resistance;
        break;
    }
    }
    return reading;
}

} // namespace bankwright
