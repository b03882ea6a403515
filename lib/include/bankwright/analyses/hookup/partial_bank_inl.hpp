// Bodies of partial_bank.hpp.
#pragma once

#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/union_find.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/solve.hpp"

#include <stdexcept>
#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE PartialBank::PartialBank(Bank const& bank) {
    Moment moment;
    moment.loads = LoadsAre::at_rest;
    moment.chargers = false;
    network_ = build(bank, moment);
    post_.assign(network_.terminals.size(), 0);
    for (auto const& [line, post] : seats(bank))
        always_.push_back({node(post), node(line)});
    std::size_t count[part_kind_names.size()] = {};
    for (auto const& part : network_.parts) {
        auto const index = count[static_cast<std::size_t>(part.kind)]++;
        if (part.kind == PartKind::battery) {
            auto const& element = part.elements.front();
            auto const& branch = network_.circuit.branches[as_index(element.index)];
            emf_.push_back(branch.emf);
            ohms_.push_back(branch.resistance);
            minus_.push_back(branch.from);
            plus_.push_back(branch.to);
            post_[as_index(branch.from)] = post_[as_index(branch.to)] = 1;
            continue;
        }
        Connection connection{part.id, part.kind, index, {}};
        for (auto const& element : part.elements) {
            if (element.is == Element::Is::branch)
                connection.paths.push_back(
                    {element.from, element.to, network_.circuit.branches[as_index(element.index)].resistance});
            else if (element.is == Element::Is::join)
                connection.paths.push_back({element.from, element.to, 0.0});
        }
        // What nobody makes by hand is there from the start.
        if (part.kind == PartKind::charger || part.kind == PartKind::converter || part.kind == PartKind::shunt) {
            for (auto const& path : connection.paths) {
                if (path.ohms > 0.0)
                    fixed_.push_back({path.from, path.to, path.ohms, 0.0});
                else
                    always_.push_back({path.from, path.to});
            }
        } else if (!connection.paths.empty()) {
            connections_.push_back(std::move(connection));
        }
    }
}

BANKWRIGHT_INLINE PartialBank::Placed PartialBank::place(Made const& made, Deviation const& deviation) const {
    Placed placed;
    auto& circuit = placed.circuit;
    circuit.nodes = network_.circuit.nodes;
    circuit.reference = network_.circuit.reference;
    circuit.joins = always_;
    for (std::size_t b = 0; b < emf_.size(); ++b) {
        bool const deviates = deviation.battery == static_cast<int>(b);
        circuit.branches.push_back({minus_[b], plus_[b], ohms_[b], deviates ? deviation.emf : emf_[b]});
    }
    circuit.branches.insert(circuit.branches.end(), fixed_.begin(), fixed_.end());
    placed.element.resize(connections_.size());
    for (std::size_t c = 0; c < connections_.size(); ++c) {
        if (!made[c] || deviation.absent == static_cast<int>(c)) continue;
        auto const& connection = connections_[c];
        bool const is_run = connection.kind == PartKind::jumper || connection.kind == PartKind::cable;
        for (auto path : connection.paths) {
            if (deviation.connection == static_cast<int>(c))
                (deviation.from_end ? path.from : path.to) = deviation.onto;
            if (is_run) {
                path.from = landed(path.from, deviation);
                path.to = landed(path.to, deviation);
            }
            if (path.ohms > 0.0) {
                placed.element[c].push_back(static_cast<int>(circuit.branches.size()));
                circuit.branches.push_back({path.from, path.to, path.ohms, 0.0});
            } else {
                placed.element[c].push_back(-1 - static_cast<int>(circuit.joins.size()));
                circuit.joins.push_back({path.from, path.to});
            }
        }
    }
    for (auto const& [plus, minus] : deviation.leaks)
        circuit.branches.push_back({plus, minus, leak, 0.0});
    constexpr double short_lead = 0.4e-3; // [ohm] any will do
    if (deviation.extra >= 0) circuit.branches.push_back({deviation.extra, deviation.other, short_lead, 0.0});
    return placed;
}

BANKWRIGHT_INLINE int PartialBank::landed(int node, Deviation const& deviation) {
    if (node == deviation.plus && deviation.minus >= 0) return deviation.minus;
    if (node == deviation.minus && deviation.plus >= 0) return deviation.plus;
    if (node == deviation.meant && deviation.instead >= 0) return deviation.instead;
    return node;
}

BANKWRIGHT_INLINE std::vector<int> PartialBank::copper(Made const& made, Deviation const& deviation,
                                                       std::vector<std::pair<int, int>> const& clips) const {
    auto const placed = place(made, deviation);
    solver::UnionFind sets(network_.circuit.nodes);
    for (auto const& join : placed.circuit.joins)
        sets.unite(join.from, join.to);
    for (std::size_t b = emf_.size(); b < placed.circuit.branches.size(); ++b)
        if (auto const& branch = placed.circuit.branches[b]; branch.resistance < leak)
            sets.unite(branch.from, branch.to);
    for (auto const& [one, other] : clips)
        sets.unite(one, other);
    std::vector<int> joined(as_index(network_.circuit.nodes));
    for (std::size_t n = 0; n < joined.size(); ++n)
        joined[n] = sets.find(static_cast<int>(n));
    return joined;
}

BANKWRIGHT_INLINE Potentials PartialBank::read(Made const& made, Deviation const& deviation) const {
    auto const placed = place(made, deviation);
    auto solution = solver::solve(placed.circuit);
    if (solution.status != solver::Status::solved)
        throw std::logic_error("a network of batteries and copper is solvable");
    Potentials read{std::move(solution.volts), std::move(solution.island), {}, {}};
    read.battery_amps.assign(solution.branch_amps.begin(),
                             solution.branch_amps.begin() + static_cast<std::ptrdiff_t>(emf_.size()));
    for (std::size_t c = 0; c < connections_.size(); ++c) {
        read.path_amps.emplace_back(connections_[c].paths.size(), 0.0);
        for (std::size_t p = 0; p < placed.element[c].size(); ++p) {
            auto const e = placed.element[c][p];
            read.path_amps[c][p] = e >= 0 ? solution.branch_amps[as_index(e)] : solution.join_amps[as_index(-1 - e)];
        }
    }
    return read;
}

// By reciprocity: with every emf gone and 1 A drawn between the two points, what each battery carries is the share of
// its emf that shows there, and the voltage between the points is the resistance behind them.
BANKWRIGHT_INLINE Sensitivity PartialBank::sense(Made const& made, int red, int black) const {
    auto placed = place(made, {});
    for (auto& branch : placed.circuit.branches)
        branch.emf = 0.0;
    placed.circuit.loads.push_back({red, black, solver::ConstantCurrent{1.0}});
    auto const solution = solver::solve(placed.circuit);
    if (solution.status != solver::Status::solved) throw std::logic_error("a network of copper is solvable");
    Sensitivity sensitivity;
    sensitivity.per_volt.assign(solution.branch_amps.begin(),
                                solution.branch_amps.begin() + static_cast<std::ptrdiff_t>(emf_.size()));
    sensitivity.ohms = solution.volts[as_index(black)] - solution.volts[as_index(red)];
    return sensitivity;
}

BANKWRIGHT_INLINE std::vector<int> PartialBank::islands(Made const& made) const {
    solver::UnionFind sets(network_.circuit.nodes);
    for (auto const& join : always_)
        sets.unite(join.from, join.to);
    for (auto const& branch : fixed_)
        sets.unite(branch.from, branch.to);
    for (std::size_t b = 0; b < emf_.size(); ++b)
        sets.unite(minus_[b], plus_[b]);
    for (std::size_t c = 0; c < connections_.size(); ++c)
        if (made[c])
            for (auto const& path : connections_[c].paths)
                sets.unite(path.from, path.to);
    std::vector<int> island(as_index(network_.circuit.nodes));
    for (std::size_t n = 0; n < island.size(); ++n)
        island[n] = sets.find(static_cast<int>(n));
    return island;
}

} // namespace bankwright
