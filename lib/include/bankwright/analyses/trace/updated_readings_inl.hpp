// Bodies of updated_readings.hpp.
#pragma once

#include "bankwright/analyses/trace/meter_spread.hpp"
#include "bankwright/analyses/trace/starved_loads.hpp"
#include "bankwright/analyses/trace/updated_readings.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

namespace bankwright {

// The wiring with faults in it, in the names of the nodes as described: what a turned battery exchanges are names.
struct UpdatedReadings::Faulty {
    std::vector<solver::Change> changes;
    std::vector<std::pair<int, int>> exchanged;
    struct MoreDrawn {
        int plus = 0, minus = 0;
        double amperes = 0.0; // [A]
    };
    std::vector<MoreDrawn> loads;
    std::vector<double> deviation; // [V] by element: an emf that stands for what is not known of it; 0: next to nothing

    int node(int drawn) const {
        for (auto const& [a, b] : exchanged)
            if (drawn == a || drawn == b) return drawn == a ? b : a;
        return drawn;
    }
    solver::Change const* change_of(int branch) const {
        for (auto const& change : changes)
            if (change.branch == branch) return &change;
        return nullptr;
    }
    void change(int branch, solver::Branch const& now) {
        for (auto& known : changes)
            if (known.branch == branch) return void(known.now = now);
        changes.push_back({branch, now});
    }
    solver::Branch const& branch(solver::Circuit const& drawn, int number) const {
        auto const* change = change_of(number);
        return change ? change->now : drawn.branches[static_cast<std::size_t>(number)];
    }
};

BANKWRIGHT_INLINE UpdatedReadings::UpdatedReadings(FaultyWiring wiring, PartSpread const& spread)
    : wiring_(std::move(wiring)), spread_(spread), topology_(solver::topology(wiring_.circuit)) {
    auto const& loads = wiring_.circuit.loads;
    serves_ = topology_.merged_nodes <= solver::SolveOptions{}.star_mesh_limit &&
              std::all_of(loads.begin(), loads.end(),
                          [](auto const& load) { return std::holds_alternative<solver::ConstantCurrent>(load.law); });
    if (!serves_) return;
    as_read_.emplace(wiring_.circuit);
    volts_.resize(static_cast<std::size_t>(as_read_->width()));
    response_ = volts_;
}

BANKWRIGHT_INLINE bool UpdatedReadings::together(int a, int b) const {
    return topology_.island[static_cast<std::size_t>(a)] == topology_.island[static_cast<std::size_t>(b)];
}

BANKWRIGHT_INLINE std::optional<std::vector<ExpectedReading>>
UpdatedReadings::with(Faults const& faults, std::vector<PartDoubt> const& doubts,
                      std::vector<AskedReading> const& asked) {
    if (!serves_) return std::nullopt;
    auto const& circuit = wiring_.circuit;
    Faulty faulty;
    for (auto const& [fault, value] : faults)
        if (!put(*fault, value, faulty)) return std::nullopt;
    solver::VariantAnswer answer;
    as_read_->solve(faulty.changes.data(), faulty.changes.size(), 1, volts_.data(), &answer);
    if (!answer.updated) return std::nullopt;
    for (auto const& more : faulty.loads) { // what a load takes beside what it is drawn with
        if (!together(more.plus, more.minus) || !respond(faulty, more.plus, more.minus)) return std::nullopt;
        for (std::size_t n = 0; n < volts_.size(); ++n)
            volts_[n] -= more.amperes * response_[n];
    }

    for (std::size_t l = 0; l < circuit.loads.size(); ++l) {
        auto const plus = static_cast<std::size_t>(faulty.node(circuit.loads[l].plus)),
                   minus = static_cast<std::size_t>(faulty.node(circuit.loads[l].minus));
        if (internal::expecting::is_starved(wiring_, l, volts_[plus] - volts_[minus])) return std::nullopt;
    }

    auto const merged = [&](int node) { return topology_.merged[static_cast<std::size_t>(node)]; };
    faulty.deviation.resize(wiring_.elements.size());
    for (std::size_t e = 0; e < wiring_.elements.size(); ++e) {
        auto const& element = wiring_.elements[e];
        if (element.is != Element::Is::branch) continue;
        auto const& branch = faulty.branch(circuit, element.index);
        if (merged(branch.from) == merged(branch.to) || std::isinf(branch.resistance)) continue;
        double const amperes =
            (volts_[static_cast<std::size_t>(branch.from)] - volts_[static_cast<std::size_t>(branch.to)] + branch.emf) /
            branch.resistance;
        faulty.deviation[e] = emf_of_doubt(e, branch, amperes, spread_, doubts);
    }
    for (auto const& fault : faults) // the other way around, as what it does to the readings
        if (fault.first->kind == FaultKind::reversed) faulty.deviation[fault.first->element] *= -1.0;
    std::vector<ExpectedReading> readings(asked.size());
    for (std::size_t r = 0; r < asked.size(); ++r)
        if (!read(faulty, asked[r], readings[r])) return std::nullopt;
    return readings;
}

// False where no change of branches says it.
BANKWRIGHT_INLINE bool UpdatedReadings::put(FaultChange const& fault, double value, Faulty& faulty) const {
    auto const& circuit = wiring_.circuit;
    if (fault.kind == FaultKind::exchanged) return exchange(fault, faulty);
    for (auto e = fault.element; e < fault.element + fault.elements; ++e) {
        auto const& element = wiring_.elements[e];
        if (element.is == Element::Is::gap) continue; // at this moment it does nothing
        if (element.is == Element::Is::join) return false;
        if (element.is == Element::Is::load) {
            auto const& load = circuit.loads[static_cast<std::size_t>(element.index)];
            double const more = load_multiple(fault, value, wiring_) - 1.0;
            faulty.loads.push_back({load.plus, load.minus, more * std::get<solver::ConstantCurrent>(load.law).amperes});
            continue;
        }
        auto branch = changed(fault, value, faulty.branch(circuit, element.index));
        if (fault.kind == FaultKind::moved) {
            auto& end = fault.from_end ? branch.from : branch.to;
            end = faulty.node(end);
        }
        if (fault.kind == FaultKind::reversed) {
            faulty.exchanged.emplace_back(branch.from, branch.to);
            branch.emf = -branch.emf; // between the same nodes, whose names are exchanged
        }
        faulty.change(element.index, branch);
    }
    return true;
}

// Every lead on the one terminal is landed on the other; the part itself stays.
BANKWRIGHT_INLINE bool UpdatedReadings::exchange(FaultChange const& fault, Faulty& faulty) const {
    auto const swapped = [&](int node) {
        return node == fault.plus ? fault.minus : node == fault.minus ? fault.plus : node;
    };
    for (std::size_t e = 0; e < wiring_.elements.size(); ++e) {
        auto const& element = wiring_.elements[e];
        if (element.is == Element::Is::gap || (e >= fault.element && e < fault.element + fault.elements)) continue;
        if (element.is == Element::Is::branch) {
            auto branch = faulty.branch(wiring_.circuit, element.index);
            if (swapped(branch.from) == branch.from && swapped(branch.to) == branch.to) continue;
            branch.from = swapped(branch.from);
            branch.to = swapped(branch.to);
            faulty.change(element.index, branch);
        } else if (swapped(element.from) != element.from || swapped(element.to) != element.to) {
            return false;
        }
    }
    return true;
}

BANKWRIGHT_INLINE bool UpdatedReadings::read(Faulty const& faulty, AskedReading const& asked,
                                             ExpectedReading& reading) {
    reading.sensitivities.assign(wiring_.elements.size(), 0.0);
    auto const between = [&](int red, int black) {
        reading.mean = volts_[static_cast<std::size_t>(red)] - volts_[static_cast<std::size_t>(black)];
        if (!respond(faulty, red, black)) return false;
        be_moved(faulty, reading.sensitivities);
        return true;
    };
    if (!asked.element) {
        int const red = faulty.node(asked.red), black = faulty.node(asked.black);
        if (together(red, black)) return between(red, black);
        reading.own_spread = internal::expecting::floating_volts;
        return true;
    }
    auto const& element = wiring_.elements[*asked.element];
    if (element.is != Element::Is::branch || faulty.change_of(element.index)) return false;
    auto const& branch = wiring_.circuit.branches[static_cast<std::size_t>(element.index)];
    if (!between(branch.from, branch.to)) return false;
    reading.mean = (reading.mean + branch.emf) / branch.resistance;
    reading.sensitivities[*asked.element] += faulty.deviation[*asked.element];
    for (double& sensitivity : reading.sensitivities)
        sensitivity /= branch.resistance;
    return true;
}

// response_ [V] by node, per ampere.
BANKWRIGHT_INLINE bool UpdatedReadings::respond(Faulty const& faulty, int red, int black) {
    if (topology_.merged[static_cast<std::size_t>(red)] == topology_.merged[static_cast<std::size_t>(black)]) {
        std::fill(response_.begin(), response_.end(), 0.0);
        return true;
    }
    auto found = answering_.find({red, black});
    if (found == answering_.end())
        found = answering_.emplace(std::pair(red, black), as_read_->answering(red, black)).first;
    auto changes = faulty.changes;
    for (auto& change : changes)
        change.now.emf = 0.0;
    solver::VariantAnswer answer;
    found->second.solve(changes.data(), changes.size(), 1, response_.data(), &answer);
    return answer.updated;
}

BANKWRIGHT_INLINE void UpdatedReadings::be_moved(Faulty const& faulty, std::vector<double>& sensitivities) const {
    for (std::size_t e = 0; e < sensitivities.size(); ++e) {
        if (faulty.deviation[e] == 0.0) continue;
        auto const& branch = faulty.branch(wiring_.circuit, wiring_.elements[e].index);
        sensitivities[e] =
            (response_[static_cast<std::size_t>(branch.to)] - response_[static_cast<std::size_t>(branch.from)]) *
            faulty.deviation[e] / branch.resistance;
    }
}

} // namespace bankwright
