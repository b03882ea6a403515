// Bodies of faults.hpp.
#pragma once

#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/units/print.hpp"

#include <cmath>
#include <limits>
#include <utility>

#include <fmt/format.h>

namespace bankwright {

BANKWRIGHT_INLINE FaultyWiring wiring_of(Network const& network) {
    FaultyWiring wiring{network.circuit, {}};
    for (auto const& part : network.parts)
        wiring.elements.insert(wiring.elements.end(), part.elements.begin(), part.elements.end());
    return wiring;
}

namespace internal::fault_finding {

// A joint worth finding to a contact that hardly conducts. Each step is a factor of 1.6: what lies between is met by
// the spread that the fit gives to the value.
inline constexpr double least_ohms = 2e-3;
inline constexpr double most_ohms = 400.0;
inline constexpr double ohm_factor = 1.6;
// Share of the open-circuit voltage that a battery has lost which is low but has no dead cell: 12.7 V to 10.9 V.
inline constexpr double least_loss = 0.02;
inline constexpr double most_loss = 0.14;
inline constexpr double loss_step = 0.02;

inline std::vector<double> ohm_ladder() {
    std::vector<double> values;
    for (double ohms = least_ohms; ohms < most_ohms; ohms *= ohm_factor)
        values.push_back(ohms);
    return values;
}

inline std::vector<double> loss_ladder() {
    std::vector<double> values;
    for (double loss = least_loss; loss <= most_loss + 1e-9; loss += loss_step)
        values.push_back(loss);
    return values;
}

// To two digits: a ladder knows no more.
inline double rounded(double value) {
    double const step = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
    return std::round(value / step) * step;
}

inline std::string about(std::string const& low, std::string const& high, char const* what) {
    return (low == high ? "about " + low : low + " to " + high) + what;
}

// Takes an element out: both its ends on one node, where it carries nothing and changes nothing.
inline void take_out(FaultyWiring& wiring, Element& element) {
    if (element.is == Element::Is::branch) {
        auto& branch = wiring.circuit.branches[static_cast<std::size_t>(element.index)];
        branch.to = branch.from;
        branch.emf = 0.0;
    }
    if (element.is == Element::Is::join) {
        auto& join = wiring.circuit.joins[static_cast<std::size_t>(element.index)];
        join.to = join.from;
    }
    element.is = Element::Is::gap;
    element.index = -1;
}

// What should be on one node of the two is on the other; the battery between them stays.
inline void exchange(FaultyWiring& wiring, int battery_branch, int plus, int minus) {
    auto const swap = [&](int& node) {
        if (node == plus)
            node = minus;
        else if (node == minus)
            node = plus;
    };
    auto& circuit = wiring.circuit;
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        if (static_cast<int>(b) == battery_branch) continue;
        swap(circuit.branches[b].from);
        swap(circuit.branches[b].to);
    }
    for (auto& join : circuit.joins) {
        swap(join.from);
        swap(join.to);
    }
    for (auto& load : circuit.loads) {
        swap(load.plus);
        swap(load.minus);
    }
}

inline void move_end(FaultyWiring& wiring, Element& element, bool from_end, int terminal) {
    if (element.is == Element::Is::branch) {
        auto& branch = wiring.circuit.branches[static_cast<std::size_t>(element.index)];
        (from_end ? branch.from : branch.to) = terminal;
    }
    if (element.is == Element::Is::join) {
        auto& join = wiring.circuit.joins[static_cast<std::size_t>(element.index)];
        (from_end ? join.from : join.to) = terminal;
    }
    (from_end ? element.from : element.to) = terminal;
}

// An ideal join that is ideal no longer.
inline void make_resist(FaultyWiring& wiring, Element& element, double ohms) {
    auto const join = wiring.circuit.joins[static_cast<std::size_t>(element.index)];
    take_out(wiring, element);
    wiring.circuit.branches.push_back({join.from, join.to, ohms, 0.0});
    element.is = Element::Is::branch;
    element.index = static_cast<int>(wiring.circuit.branches.size()) - 1;
}

} // namespace internal::fault_finding

BANKWRIGHT_INLINE std::optional<solver::Change> branch_change(FaultChange const& change, double value,
                                                              FaultyWiring const& wiring) {
    auto const& element = wiring.elements[change.element];
    if (element.is != Element::Is::branch || change.kind == FaultKind::reversed) return std::nullopt;
    auto now = wiring.circuit.branches[static_cast<std::size_t>(element.index)];
    double const cells = change.cells;
    switch (change.kind) {
    case FaultKind::missing:
    case FaultKind::open:
        now.resistance = std::numeric_limits<double>::infinity();
        now.emf = 0.0;
        break;
    case FaultKind::moved:
        (change.from_end ? now.from : now.to) = change.terminal;
        break;
    case FaultKind::resistive:
        now.resistance += value;
        break;
    case FaultKind::dead:
        now.emf = 0.0;
        break;
    case FaultKind::low:
        now.emf *= 1.0 - value;
        break;
    case FaultKind::dead_cell:
        now.emf *= (cells - 1.0) / cells;
        now.resistance *= 10.0; // a cell that gives nothing is mostly one that resists; from memory, no figure read
        break;
    case FaultKind::shorted_cell:
        now.emf *= (cells - 1.0) / cells;
        now.resistance *= (cells - 1.0) / cells;
        break;
    case FaultKind::reversed:
        break;
    }
    return solver::Change{element.index, now};
}

BANKWRIGHT_INLINE void apply(FaultChange const& change, double value, FaultyWiring& wiring) {
    auto& element = wiring.elements[change.element];
    auto const branch = [&]() -> auto& { return wiring.circuit.branches[static_cast<std::size_t>(element.index)]; };
    if (change.kind == FaultKind::missing || change.kind == FaultKind::open)
        internal::fault_finding::take_out(wiring, element);
    else if (change.kind == FaultKind::moved)
        internal::fault_finding::move_end(wiring, element, change.from_end, change.terminal);
    else if (change.kind == FaultKind::reversed)
        internal::fault_finding::exchange(wiring, element.index, branch().to, branch().from);
    else if (auto const changed = branch_change(change, value, wiring))
        branch() = changed->now;
    else if (element.is == Element::Is::join)
        internal::fault_finding::make_resist(wiring, element, value);
}

BANKWRIGHT_INLINE std::vector<FaultChange> single_faults(Bank const& bank, Network const& network) {
    std::vector<FaultChange> faults;
    auto const add = [&](FaultKind kind, std::size_t part, std::size_t element, std::vector<double> ladder = {}) {
        FaultChange change;
        change.kind = kind;
        change.part = part;
        change.element = element;
        change.ladder = std::move(ladder);
        faults.push_back(std::move(change));
    };
    auto const ohms = internal::fault_finding::ohm_ladder();
    auto const losses = internal::fault_finding::loss_ladder();
    std::size_t element = 0, battery = 0;
    for (std::size_t p = 0; p < network.parts.size(); ++p) {
        auto const& part = network.parts[p];
        if (part.kind == PartKind::battery) {
            auto const& as_labelled = bank.batteries[battery++];
            // One whose label says nothing of its cells has no cell to suspect.
            int const cells = as_labelled.cells || as_labelled.chemistry ? cell_count(as_labelled) : 0;
            add(FaultKind::reversed, p, element);
            add(FaultKind::low, p, element, losses);
            if (cells > 1) {
                add(FaultKind::shorted_cell, p, element);
                faults.back().cells = cells;
                add(FaultKind::dead_cell, p, element);
                faults.back().cells = cells;
            }
            add(FaultKind::dead, p, element);
        }
        bool const is_conductor = part.kind == PartKind::jumper || part.kind == PartKind::cable;
        bool const is_device = part.kind == PartKind::breaker || part.kind == PartKind::fuse ||
                               part.kind == PartKind::switch_ || part.kind == PartKind::connector;
        for (std::size_t e = 0; e < part.elements.size(); ++e) {
            if (part.elements[e].is == Element::Is::gap || (!is_conductor && !is_device)) continue;
            add(is_conductor ? FaultKind::missing : FaultKind::open, p, element + e);
            add(FaultKind::resistive, p, element + e, ohms);
            if (!is_conductor) continue;
            for (bool const from_end : {true, false})
                for (int t = 0; t < static_cast<int>(network.terminals.size()); ++t) {
                    if (t == part.elements[e].from || t == part.elements[e].to) continue;
                    add(FaultKind::moved, p, element + e);
                    faults.back().from_end = from_end;
                    faults.back().terminal = t;
                }
        }
        element += part.elements.size();
    }
    return faults;
}

BANKWRIGHT_INLINE Fault describe(FaultChange const& change, double low, double high, Network const& network) {
    auto const& part = network.parts[change.part];
    Fault fault{change.kind, part.id, {}, {}, {}};
    bool const is_any =
        change.ladder.size() > 1 && low <= change.ladder[1] && high >= change.ladder[change.ladder.size() - 2];
    if (change.kind == FaultKind::resistive && !is_any)
        fault.detail = internal::fault_finding::about(print(internal::fault_finding::rounded(low) * si::ohm),
                                                      print(internal::fault_finding::rounded(high) * si::ohm),
                                                      " more than it should");
    if (change.kind == FaultKind::low && !is_any)
        fault.detail = internal::fault_finding::about(
            fmt::format("{:.0f} %", low * 100), fmt::format("{:.0f} %", high * 100), " below its voltage at rest");
    if (change.kind == FaultKind::moved) {
        auto const name = [&](int terminal) { return network.terminals[static_cast<std::size_t>(terminal)]; };
        auto const& as_described = part.elements.front();
        fault.on = name(change.terminal);
        fault.instead_of = name(change.from_end ? as_described.from : as_described.to);
        fault.detail = fmt::format("on {} instead of {}", fault.on, fault.instead_of);
    }
    if (part.kind == PartKind::connector && change.kind != FaultKind::reversed) {
        std::size_t first = 0;
        for (std::size_t p = 0; p < change.part; ++p)
            first += network.parts[p].elements.size();
        auto const* pole = change.element == first ? "positive pole" : "negative pole";
        fault.detail = fault.detail.empty() ? pole : std::string(pole) + ", " + fault.detail;
    }
    return fault;
}

} // namespace bankwright
