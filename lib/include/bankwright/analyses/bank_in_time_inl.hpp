#pragma once

#include "bankwright/analyses/bank_in_time.hpp"

#include "bankwright/devices/battery_acceptance.hpp"
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

BANKWRIGHT_INLINE BankInTime::BankInTime(Bank const& bank, Moment const& moment, bool charging)
    : bank_(bank), moment_(moment), charging_(charging), branch_(bank.batteries.size(), 0) {
    build_network();
}

BANKWRIGHT_INLINE void BankInTime::change(Moment const& moment) {
    moment_ = moment;
    build_network();
}

BANKWRIGHT_INLINE void BankInTime::build_network() {
    network_ = build(bank_, moment_);
    load_ids_.clear();
    load_elements_.clear();
    output_places_.clear();
    auto const gone = branch_;
    std::size_t battery = 0;
    for (auto const& part : network_.parts) {
        if (part.kind == PartKind::battery) branch_[battery++] = part.elements.front().index;
        if (part.kind == PartKind::motor || part.kind == PartKind::load) {
            load_ids_.push_back(part.id);
            load_elements_.push_back(part.elements.front());
        }
        if (part.kind == PartKind::charger)
            for (std::size_t k = 0; k < part.elements.size(); ++k)
                if (part.elements[k].is == Element::Is::load)
                    output_places_.push_back({part.id + "." + std::to_string(k + 1), part.elements[k]});
    }
    for (std::size_t b = 0; b < gone.size(); ++b)
        if (gone[b] < 0) take_out(b);
    topology_ = planned(network_.circuit);
    map_.reset();
    steady_ = 0;
}

BANKWRIGHT_INLINE bool BankInTime::solve(std::vector<double> const& charge) {
    charge_.assign(charge.begin(), charge.begin() + static_cast<std::ptrdiff_t>(branch_.size()));
    bool steady = true;
    for (std::size_t b = 0; b < branch_.size(); ++b) {
        if (branch_[b] < 0) continue;
        auto const& battery = bank_.batteries[b];
        auto const state = StateOfCharge::of(std::clamp(charge[b], 0.0, 1.0));
        auto& branch = network_.circuit.branches[static_cast<std::size_t>(branch_[b])];
        branch.emf = open_circuit_voltage(battery, state, bank_.system.ambient).value();
        auto const before = branch.resistance;
        branch.resistance = (charging_ ? charging_resistance(battery, state, bank_.system.ambient)
                                       : internal_resistance(battery, state, bank_.system.ambient))
                                .value();
        steady = steady && branch.resistance == before;
    }
    constexpr int worth_a_map = 3; // solves with the same resistances; a run that is not over then has many to come
    steady_ = steady ? steady_ + 1 : 0;
    if (!steady) map_.reset();
    if (steady_ >= worth_a_map)
        solve_by_map();
    else
        solution_ = solver::solve(network_.circuit, topology_);
    return solution_.status == solver::Status::solved;
}

BANKWRIGHT_INLINE void BankInTime::solve_by_map() {
    auto const& circuit = network_.circuit;
    std::vector<int> sources;
    emfs_.clear();
    for (int branch : branch_)
        if (branch >= 0) {
            sources.push_back(branch);
            emfs_.push_back(circuit.branches[static_cast<std::size_t>(branch)].emf);
        }
    if (!map_) map_.emplace(circuit, topology_, sources, solver::everything(circuit));
    answer_.resize(map_->values());
    solution_.volts.resize(static_cast<std::size_t>(circuit.nodes));
    solution_.branch_amps.resize(circuit.branches.size());
    solution_.load_amps.resize(circuit.loads.size());
    solution_.status = map_->solve(emfs_.data(), answer_.data(), solution_.load_amps.data());
    auto const branches = answer_.begin() + circuit.nodes;
    std::copy(answer_.begin(), branches, solution_.volts.begin());
    std::copy(branches, answer_.end(), solution_.branch_amps.begin());
}

BANKWRIGHT_INLINE double BankInTime::amperes(std::size_t battery) const {
    return branch_[battery] < 0 ? 0.0 : solution_.branch_amps[static_cast<std::size_t>(branch_[battery])];
}

BANKWRIGHT_INLINE double BankInTime::volts(std::size_t battery) const {
    if (branch_[battery] < 0) return 0.0;
    auto const& branch = network_.circuit.branches[static_cast<std::size_t>(branch_[battery])];
    return branch.emf - branch.resistance * amperes(battery);
}

// Charging gives back what the chemistry's coulombic efficiency leaves of it, and near full what does not go into gas.
BANKWRIGHT_INLINE double BankInTime::charge_rate(std::size_t b) const {
    auto const current = amperes(b);
    auto const& battery = bank_.batteries[b];
    if (current > 0.0) return -current / usable_capacity(battery, current * si::ampere, bank_.system.ambient).value();
    auto const full = usable_capacity(battery, 0.0 * si::ampere, bank_.system.ambient).value(); // [C]
    auto const kept = charging_ ? share_stored(battery, StateOfCharge::of(std::clamp(charge_[b], 0.0, 1.0))) : 1.0;
    return -current * coulombic_efficiency(*battery.chemistry).value() * kept / full;
}

BANKWRIGHT_INLINE double BankInTime::load_volts(std::size_t load) const {
    auto const& element = load_elements_[load];
    return solution_.volts[static_cast<std::size_t>(element.from)] -
           solution_.volts[static_cast<std::size_t>(element.to)];
}

BANKWRIGHT_INLINE bool BankInTime::draws() const {
    constexpr double nothing = 1e-6; // [A]
    return std::any_of(load_elements_.begin(), load_elements_.end(), [&](Element const& element) {
        auto const i = static_cast<std::size_t>(element.index);
        if (element.is == Element::Is::load) return std::abs(solution_.load_amps[i]) > nothing;
        return element.is == Element::Is::branch && std::abs(solution_.branch_amps[i]) > nothing;
    });
}

BANKWRIGHT_INLINE double BankInTime::watts(Element const& element) const {
    if (element.is != Element::Is::load && element.is != Element::Is::branch) return 0.0;
    auto const i = static_cast<std::size_t>(element.index);
    auto const amperes = element.is == Element::Is::load ? solution_.load_amps[i] : solution_.branch_amps[i];
    return amperes * (solution_.volts[static_cast<std::size_t>(element.from)] -
                      solution_.volts[static_cast<std::size_t>(element.to)]);
}

BANKWRIGHT_INLINE PowerSplit BankInTime::powers() const {
    PowerSplit powers;
    auto const& branches = network_.circuit.branches;
    for (std::size_t i = 0; i < branches.size(); ++i) {
        auto const amperes = solution_.branch_amps[i];
        auto const heat = amperes * amperes * branches[i].resistance;
        bool const battery = std::find(branch_.begin(), branch_.end(), static_cast<int>(i)) != branch_.end();
        powers.given += branches[i].emf * amperes;
        (battery ? powers.battery_heat : powers.wiring_heat) += heat;
    }
    for (auto const& element : load_elements_) {
        auto const taken = watts(element);
        powers.used += taken;
        if (element.is == Element::Is::branch) powers.wiring_heat -= taken; // a load that is a resistor
    }
    for (auto const& output : output_places_)
        powers.charged -= watts(output.element);
    return powers;
}

BANKWRIGHT_INLINE std::vector<BankInTime::Output> BankInTime::outputs() const {
    std::vector<Output> outputs;
    for (auto const& place : output_places_) {
        auto const i = static_cast<std::size_t>(place.element.index);
        auto const& source = std::get<solver::LimitedSource>(network_.circuit.loads[i].law);
        Output output{place.name};
        output.amperes = -solution_.load_amps[i];
        output.volts = solution_.volts[static_cast<std::size_t>(place.element.from)] -
                       solution_.volts[static_cast<std::size_t>(place.element.to)];
        output.limited = output.amperes > source.amperes * (1.0 - 1e-9);
        outputs.push_back(std::move(output));
    }
    return outputs;
}

// Leaves the circuit without this battery's branch, and every index right.
BANKWRIGHT_INLINE void BankInTime::take_out(std::size_t battery) {
    auto const gone = branch_[battery];
    network_.circuit.branches.erase(network_.circuit.branches.begin() + gone);
    auto const close_up = [gone](int& index) { index -= index > gone; };
    branch_[battery] = -1;
    for (auto& branch : branch_)
        close_up(branch);
    for (auto& element : load_elements_)
        if (element.is == Element::Is::branch) close_up(element.index);
}

BANKWRIGHT_INLINE void BankInTime::drop_out(std::size_t battery) {
    take_out(battery);
    topology_ = planned(network_.circuit);
    map_.reset();
    steady_ = 0;
}

} // namespace bankwright
