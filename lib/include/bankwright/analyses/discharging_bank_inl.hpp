#pragma once

#include "bankwright/analyses/discharging_bank.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/elimination_plan.hpp"
#include "bankwright/solver/solve.hpp"

#include <algorithm>
#include <cmath>

namespace bankwright {

// One wiring, many charges: its elimination is planned once.
inline solver::Topology planned(solver::Circuit const& circuit) {
    return solver::with_plan(solver::topology(circuit), solver::SolveOptions{}.star_mesh_limit);
}

BANKWRIGHT_INLINE DischargingBank::DischargingBank(Bank const& bank, Moment const& moment)
    : bank_(bank), network_(build(bank, moment)), topology_(planned(network_.circuit)) {
    for (auto const& part : network_.parts) {
        if (part.kind == PartKind::battery) branch_.push_back(part.elements.front().index);
        if (part.kind != PartKind::motor && part.kind != PartKind::load) continue;
        load_ids_.push_back(part.id);
        load_elements_.push_back(part.elements.front());
    }
}

BANKWRIGHT_INLINE bool DischargingBank::solve(std::vector<double> const& charge) {
    for (std::size_t b = 0; b < branch_.size(); ++b) {
        if (branch_[b] < 0) continue;
        auto const& battery = bank_.batteries[b];
        auto const state = StateOfCharge::of(std::clamp(charge[b], 0.0, 1.0));
        auto& branch = network_.circuit.branches[static_cast<std::size_t>(branch_[b])];
        branch.emf = open_circuit_voltage(battery, state, bank_.system.ambient).value();
        branch.resistance = internal_resistance(battery, state, bank_.system.ambient).value();
    }
    solution_ = solver::solve(network_.circuit, topology_);
    return solution_.status == solver::Status::solved;
}

BANKWRIGHT_INLINE double DischargingBank::amperes(std::size_t battery) const {
    return branch_[battery] < 0 ? 0.0 : solution_.branch_amps[static_cast<std::size_t>(branch_[battery])];
}

BANKWRIGHT_INLINE double DischargingBank::volts(std::size_t battery) const {
    if (branch_[battery] < 0) return 0.0;
    auto const& branch = network_.circuit.branches[static_cast<std::size_t>(branch_[battery])];
    return branch.emf - branch.resistance * amperes(battery);
}

// Charging gives back what the chemistry's coulombic efficiency leaves of it.
BANKWRIGHT_INLINE double DischargingBank::charge_rate(std::size_t b) const {
    auto const current = amperes(b);
    auto const& battery = bank_.batteries[b];
    if (current > 0.0) return -current / usable_capacity(battery, current * si::ampere, bank_.system.ambient).value();
    auto const full = usable_capacity(battery, 0.0 * si::ampere, bank_.system.ambient).value(); // [C]
    return -current * coulombic_efficiency(*battery.chemistry).value() / full;
}

BANKWRIGHT_INLINE double DischargingBank::load_volts(std::size_t load) const {
    auto const& element = load_elements_[load];
    return solution_.volts[static_cast<std::size_t>(element.from)] -
           solution_.volts[static_cast<std::size_t>(element.to)];
}

BANKWRIGHT_INLINE bool DischargingBank::draws() const {
    constexpr double nothing = 1e-6; // [A]
    return std::any_of(load_elements_.begin(), load_elements_.end(), [&](Element const& element) {
        auto const i = static_cast<std::size_t>(element.index);
        if (element.is == Element::Is::load) return std::abs(solution_.load_amps[i]) > nothing;
        return element.is == Element::Is::branch && std::abs(solution_.branch_amps[i]) > nothing;
    });
}

BANKWRIGHT_INLINE void DischargingBank::drop_out(std::size_t battery) {
    auto const gone = branch_[battery];
    network_.circuit.branches.erase(network_.circuit.branches.begin() + gone);
    auto const close_up = [gone](int& index) { index -= index > gone; };
    branch_[battery] = -1;
    for (auto& branch : branch_)
        close_up(branch);
    for (auto& element : load_elements_)
        if (element.is == Element::Is::branch) close_up(element.index);
    topology_ = planned(network_.circuit);
}

} // namespace bankwright
