#pragma once

#include "bankwright/analyses/in_time/bank_in_time.hpp"
#include "bankwright/devices/battery_acceptance.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/coupled_loads.hpp"
#include "bankwright/solver/solve.hpp"

#include <algorithm>
#include <cmath>

namespace bankwright {

namespace internal {

// One wiring, many charges: its elimination is planned once.
inline solver::Topology planned(solver::Circuit const& circuit) {
    return solver::with_plan(solver::topology(circuit), solver::SolveOptions{}.star_mesh_limit);
}

inline std::size_t rows_of_batteries(Bank const& bank) { return solver::rows_for(bank.batteries.size()); }

} // namespace internal

BANKWRIGHT_INLINE BankInTime::BankInTime(Bank const& bank, Moment const& moment, bool charging)
    : bank_(bank), moment_(moment), charging_(charging),
      gives_(bank.batteries.size(), moment.loads != LoadsAre::at_rest), // loads find no operating point else
      charge_(bank.batteries.size(), 0.0), curve_lanes_(bank.batteries.size()), rates_at_(bank, charging),
      lag_(internal::rows_of_batteries(bank)), whole_(internal::rows_of_batteries(bank)),
      shown_(internal::rows_of_batteries(bank)), emfs_(internal::rows_of_batteries(bank)),
      amperes_(internal::rows_of_batteries(bank)), branch_(bank.batteries.size(), 0) {
    auto const& batteries = bank.batteries;
    for (std::size_t b = 0; b < batteries.size(); ++b) {
        if (b == 0 || !share_open_circuit_curve(batteries[b - 1], batteries[b]))
            curves_.push_back(open_circuit_curve(batteries[b], bank.system.ambient));
        curve_of_.push_back(curves_.size() - 1);
        least_.push_back(-deep_charge(*batteries[b].chemistry));
    }
    stay_ = !charging && std::all_of(batteries.begin(), batteries.end(), [](auto const& b) { return !!b.resistance; });
    build_network();
}

BANKWRIGHT_INLINE void BankInTime::change(Moment const& moment) {
    moment_ = moment;
    build_network();
}

BANKWRIGHT_INLINE void BankInTime::build_network() {
    network_ = build(bank_, moment_);
    idle_converters(network_);
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
    start_over();
}

BANKWRIGHT_INLINE void BankInTime::start_over() {
    auto const& circuit = network_.circuit;
    topology_ = internal::planned(circuit);
    auto const values = static_cast<std::size_t>(circuit.nodes) + circuit.branches.size();
    answer_ = solver::LaneRows(solver::rows_for(values));
    map_.reset();
    steady_ = 0;
    wiring_.clear();
    for (int branch = 0; branch < static_cast<int>(circuit.branches.size()); ++branch)
        if (std::find(branch_.begin(), branch_.end(), branch) == branch_.end()) wiring_.push_back(branch);
    if (stay_ && !is_coupled(network_)) make_map();
}

BANKWRIGHT_INLINE bool BankInTime::renew_resistances() {
    bool as_before = true;
    for (std::size_t b = 0; b < branch_.size(); ++b) {
        if (branch_[b] < 0) continue;
        auto const& battery = bank_.batteries[b];
        auto const state = StateOfCharge::of(whole_.data()[b]);
        auto& resistance = network_.circuit.branches[static_cast<std::size_t>(branch_[b])].resistance;
        auto const before = resistance;
        resistance = (charging_ && !gives_[b] ? charging_resistance(battery, state, bank_.system.ambient)
                                              : internal_resistance(battery, state, bank_.system.ambient))
                         .value();
        as_before = as_before && resistance == before;
    }
    return as_before;
}

BANKWRIGHT_INLINE bool BankInTime::solve(double const* charge, double const* lag) {
    for (std::size_t b = 0; b < branch_.size(); ++b) {
        charge_[b] = charge[b];
        lag_.data()[b] = lag[b];
        whole_.data()[b] = std::clamp(charge[b], 0.0, 1.0);
        shown_.data()[b] = std::clamp(charge[b] - lag[b], least_[b], 1.0);
    }
    curve_lanes_.at(shown_.data(), emfs_.data(),
                    [this](std::size_t b, double at) { return curves_[curve_of_[b]].piece(at); });
    auto status = solve_once();
    if (!charging_) return status == solver::Status::solved;
    // Every battery's current rises with the voltage across it, so one choice of directions is right, and turning one
    // wrong battery at a time, the first, finds it (Murty 1974, the least-index rule of a linear complementarity
    // problem with a P-matrix [from memory]). All at once is mostly quicker. What still turns at the end is as good as
    // idle.
    std::size_t const quick = 4, most = quick + 4 * branch_.size();
    for (std::size_t turns = 0; turns < most && status == solver::Status::solved && turn(turns >= quick); ++turns)
        status = solve_once();
    return status == solver::Status::solved;
}

BANKWRIGHT_INLINE solver::Status BankInTime::solve_once() {
    constexpr int worth_a_map = 3; // solves with the same resistances; a run that is not over then has many to come
    if (!stay_) {
        bool const as_before = renew_resistances();
        steady_ = as_before ? steady_ + 1 : 0;
        if (!as_before) map_.reset();
    }
    bool const by_map = (stay_ || steady_ >= worth_a_map) && !is_coupled(network_);
    auto const status = by_map ? solve_by_map() : solve_afresh();
    if (status != solver::Status::solved) return status;
    for (std::size_t b = 0; b < branch_.size(); ++b)
        amperes_.data()[b] = branch_[b] < 0 ? 0.0 : branch_amps(branch_[b]);
    return status;
}

// False: every battery's resistance is that of its direction already.
BANKWRIGHT_INLINE bool BankInTime::turn(bool one_by_one) {
    constexpr double nothing = 1e-9; // [A]
    bool turned = false;
    for (std::size_t b = 0; b < branch_.size() && !(turned && one_by_one); ++b) {
        double const amperes = amperes_.data()[b];
        if (std::abs(amperes) <= nothing || (amperes > 0.0) == (gives_[b] != 0)) continue;
        gives_[b] = amperes > 0.0;
        turned = true;
    }
    return turned;
}

BANKWRIGHT_INLINE solver::Status BankInTime::solve_afresh() {
    auto& circuit = network_.circuit;
    for (std::size_t b = 0; b < branch_.size(); ++b)
        if (branch_[b] >= 0) circuit.branches[static_cast<std::size_t>(branch_[b])].emf = emfs_.data()[b];
    auto const solution =
        solve_coupled(network_, [&](solver::Circuit const& now) { return solver::solve(now, topology_); });
    if (solution.status != solver::Status::solved) return solution.status;
    std::copy(solution.volts.begin(), solution.volts.end(), answer_.data());
    std::copy(solution.branch_amps.begin(), solution.branch_amps.end(), answer_.data() + solution.volts.size());
    load_amps_ = solution.load_amps;
    return solution.status;
}

BANKWRIGHT_INLINE void BankInTime::make_map() {
    auto const& circuit = network_.circuit;
    std::vector<int> branches;
    for (int branch : branch_)
        if (branch >= 0) branches.push_back(branch);
    map_.emplace(circuit, topology_, branches, solver::everything(circuit));
    sources_.resize(branches.size());
    load_amps_.resize(circuit.loads.size());
}

BANKWRIGHT_INLINE solver::Status BankInTime::solve_by_map() {
    if (!map_) make_map();
    if (sources_.size() == branch_.size()) return map_->solve(emfs_.data(), answer_.data(), load_amps_.data());
    auto* source = sources_.data();
    for (std::size_t b = 0; b < branch_.size(); ++b)
        if (branch_[b] >= 0) *source++ = emfs_.data()[b];
    return map_->solve(sources_.data(), answer_.data(), load_amps_.data());
}

BANKWRIGHT_INLINE double BankInTime::volts(std::size_t battery) const {
    if (branch_[battery] < 0) return 0.0;
    auto const& branch = network_.circuit.branches[static_cast<std::size_t>(branch_[battery])];
    return emfs_.data()[battery] - branch.resistance * amperes(battery);
}

BANKWRIGHT_INLINE void BankInTime::rates(double* charge_rates, double* lag_rates) {
    rates_at_.at({amperes_.data(), whole_.data(), lag_.data()}, charge_rates, lag_rates);
}

BANKWRIGHT_INLINE double BankInTime::load_volts(std::size_t load) const {
    auto const& element = load_elements_[load];
    return node_volts(element.from) - node_volts(element.to);
}

BANKWRIGHT_INLINE bool BankInTime::draws() const {
    constexpr double nothing = 1e-6; // [A]
    return std::any_of(load_elements_.begin(), load_elements_.end(), [&](Element const& element) {
        if (element.is == Element::Is::load)
            return std::abs(load_amps_[static_cast<std::size_t>(element.index)]) > nothing;
        return element.is == Element::Is::branch && std::abs(branch_amps(element.index)) > nothing;
    });
}

BANKWRIGHT_INLINE double BankInTime::watts(Element const& element) const {
    if (element.is != Element::Is::load && element.is != Element::Is::branch) return 0.0;
    auto const amperes = element.is == Element::Is::load ? load_amps_[static_cast<std::size_t>(element.index)]
                                                         : branch_amps(element.index);
    return amperes * (node_volts(element.from) - node_volts(element.to));
}

BANKWRIGHT_INLINE Element BankInTime::load_element(int load) const {
    auto const& at = network_.circuit.loads[as_index(load)];
    return {Element::Is::load, load, at.plus, at.minus};
}

BANKWRIGHT_INLINE PowerSplit BankInTime::powers() const {
    PowerSplit powers;
    auto const& branches = network_.circuit.branches;
    double const* amperes = answer_.data() + network_.circuit.nodes;
    for (std::size_t b = 0; b < branch_.size(); ++b) {
        if (branch_[b] < 0) continue;
        auto const i = static_cast<std::size_t>(branch_[b]);
        powers.given += emfs_.data()[b] * amperes[i];
        powers.battery_heat += amperes[i] * amperes[i] * branches[i].resistance;
    }
    for (int branch : wiring_) {
        auto const i = static_cast<std::size_t>(branch);
        powers.given += branches[i].emf * amperes[i];
        powers.wiring_heat += amperes[i] * amperes[i] * branches[i].resistance;
    }
    for (auto const& element : load_elements_) {
        auto const taken = watts(element);
        powers.used += taken;
        if (element.is == Element::Is::branch) powers.wiring_heat -= taken; // a load that is a resistor
    }
    for (auto const& output : output_places_)
        powers.charged -= watts(output.element);
    for (auto const& coupling : network_.couplings) // what a converter loses on the way
        powers.used += watts(load_element(coupling.input)) + watts(load_element(coupling.output));
    return powers;
}

BANKWRIGHT_INLINE std::vector<BankInTime::Output> BankInTime::outputs() const {
    std::vector<Output> outputs;
    for (auto const& place : output_places_) {
        auto const i = static_cast<std::size_t>(place.element.index);
        auto const& source = std::get<solver::LimitedSource>(network_.circuit.loads[i].law);
        Output output{place.name};
        output.amperes = -load_amps_[i];
        output.volts = node_volts(place.element.from) - node_volts(place.element.to);
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
    start_over();
}

} // namespace bankwright
