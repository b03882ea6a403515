// Bodies of faults.hpp.
#pragma once

#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/units/print.hpp"

#include <cmath>
#include <limits>
#include <utility>
#include <variant>

#include <fmt/format.h>

namespace bankwright {

BANKWRIGHT_INLINE FaultyWiring wiring_of(Network const& network) {
    FaultyWiring wiring{network.circuit, {}, false, {}};
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

// Of a worn battery's internal resistance, and of a motor's current that stalls or drags weeds [from memory].
inline constexpr double least_worn = 3.0, most_worn = 30.0;            // 20 times, and what a sound one varies
inline constexpr double least_dead_cell = 4.0, dead_cell_factor = 1.7; // of the whole battery's, with one in it
inline constexpr double least_stalled = 1.5, most_stalled = 5.0;
inline constexpr double multiple_factor = 1.25;

inline std::vector<double> ladder(double least, double most, double factor) {
    std::vector<double> values;
    for (double value = least; value < most; value *= factor)
        values.push_back(value);
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

// What should be on one terminal of the two is on the other; what lies between them, the part itself, stays.
inline void exchange(FaultyWiring& wiring, FaultChange const& change, int plus, int minus) {
    auto const swap = [&](int& node) {
        if (node == plus)
            node = minus;
        else if (node == minus)
            node = plus;
    };
    auto const stays = [&](Element::Is is, std::size_t index) {
        for (auto e = change.element; e < change.element + change.elements; ++e)
            if (wiring.elements[e].is == is && wiring.elements[e].index == static_cast<int>(index)) return true;
        return false;
    };
    auto& circuit = wiring.circuit;
    for (std::size_t b = 0; b < circuit.branches.size(); ++b)
        if (!stays(Element::Is::branch, b)) swap(circuit.branches[b].from), swap(circuit.branches[b].to);
    for (std::size_t j = 0; j < circuit.joins.size(); ++j)
        if (!stays(Element::Is::join, j)) swap(circuit.joins[j].from), swap(circuit.joins[j].to);
    for (std::size_t l = 0; l < circuit.loads.size(); ++l)
        if (!stays(Element::Is::load, l)) swap(circuit.loads[l].plus), swap(circuit.loads[l].minus);
}

// A load that takes so many times its current at any voltage.
inline void take_times(solver::Law& law, double multiple) {
    if (auto* current = std::get_if<solver::ConstantCurrent>(&law)) current->amperes *= multiple;
    if (auto* power = std::get_if<solver::ConstantPower>(&law)) power->watts *= multiple;
    if (auto* motor = std::get_if<solver::SquareLaw>(&law)) motor->coefficient *= multiple;
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

BANKWRIGHT_INLINE solver::Branch changed(FaultChange const& change, double value, solver::Branch now) {
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
        now.resistance = change.is_multiple ? now.resistance * value : now.resistance + value;
        break;
    case FaultKind::dead:
        now.emf = 0.0;
        break;
    case FaultKind::low:
        now.emf *= 1.0 - value;
        break;
    case FaultKind::dead_cell:
        now.emf *= (cells - 1.0) / cells;
        now.resistance *= value; // a cell that gives nothing is mostly one that resists
        break;
    case FaultKind::shorted_cell:
        now.emf *= (cells - 1.0) / cells;
        now.resistance *= (cells - 1.0) / cells;
        break;
    case FaultKind::stalled:
        now.resistance /= value;
        break;
    case FaultKind::reversed:
    case FaultKind::exchanged:
        break;
    }
    return now;
}

BANKWRIGHT_INLINE double load_multiple(FaultChange const& change, double value, FaultyWiring const& wiring) {
    if (change.kind == FaultKind::open) return 0.0;
    return change.kind == FaultKind::stalled && !wiring.current_is_stated ? value : 1.0;
}

BANKWRIGHT_INLINE void apply(FaultChange const& change, double value, FaultyWiring& wiring) {
    if (change.kind == FaultKind::exchanged)
        return internal::fault_finding::exchange(wiring, change, change.plus, change.minus);
    for (auto e = change.element; e < change.element + change.elements; ++e) {
        auto& element = wiring.elements[e];
        auto const at = static_cast<std::size_t>(element.index);
        if (element.is == Element::Is::gap) continue; // at this moment it does nothing
        if (change.kind == FaultKind::moved)
            internal::fault_finding::move_end(wiring, element, change.from_end, change.terminal);
        else if (change.kind == FaultKind::reversed)
            internal::fault_finding::exchange(wiring, change, wiring.circuit.branches[at].to,
                                              wiring.circuit.branches[at].from);
        else if (element.is == Element::Is::load)
            internal::fault_finding::take_times(wiring.circuit.loads[at].law, load_multiple(change, value, wiring));
        else if (change.kind == FaultKind::missing || change.kind == FaultKind::open)
            internal::fault_finding::take_out(wiring, element);
        else if (element.is == Element::Is::branch)
            wiring.circuit.branches[at] = changed(change, value, wiring.circuit.branches[at]);
        else
            internal::fault_finding::make_resist(wiring, element, value);
    }
}

namespace internal::fault_finding {

// Goes through the parts once and lists what each can have.
class FaultLister {
public:
    FaultLister(Bank const& bank, Network const& network, Places const& places)
        : bank_(bank), network_(network), places_(places) {}

    std::vector<FaultChange> list() {
        std::size_t battery = 0, jumper = 0, cable = 0;
        for (; part_ < network_.parts.size(); ++part_) {
            auto const& part = network_.parts[part_];
            if (part.kind == PartKind::battery) of_battery(bank_.batteries[battery++]);
            if (part.kind == PartKind::jumper) of_run(bank_.jumpers[jumper++], part);
            if (part.kind == PartKind::cable) of_run(bank_.cables[cable++], part);
            if (part.kind == PartKind::breaker || part.kind == PartKind::fuse || part.kind == PartKind::switch_ ||
                part.kind == PartKind::shunt || part.kind == PartKind::relay || part.kind == PartKind::selector ||
                part.kind == PartKind::connector)
                of_device(part);
            if (part.kind == PartKind::connector) {
                of_plug(part);
                auto const &plus = part.elements.front(), &minus = part.elements.back();
                exchange(plus.from, minus.from, part.elements.size());
                exchange(plus.to, minus.to, part.elements.size());
            }
            if (part.kind == PartKind::motor || part.kind == PartKind::load) of_load(part);
            if (part.kind == PartKind::charger) {
                auto const outputs = network_.parts[part_].elements.size();
                auto const& first = part.elements.front(); // of several outputs the leads go to several batteries
                if (outputs == 1) exchange(first.from, first.to, 1);
            }
            element_ += part.elements.size();
        }
        return std::move(faults_);
    }

private:
    FaultChange& add(FaultKind kind, std::size_t element, std::vector<double> ladder = {}) {
        FaultChange change;
        change.kind = kind;
        change.part = part_;
        change.element = element;
        change.ladder = std::move(ladder);
        faults_.push_back(std::move(change));
        return faults_.back();
    }

    void of_battery(Battery const& as_labelled) {
        // One whose label says nothing of its cells has no cell to suspect.
        int const cells = as_labelled.cells || as_labelled.chemistry ? cell_count(as_labelled) : 0;
        add(FaultKind::reversed, element_);
        add(FaultKind::low, element_, loss_ladder());
        add(FaultKind::resistive, element_, ladder(least_worn, most_worn, multiple_factor)).is_multiple = true;
        if (cells > 1) {
            add(FaultKind::shorted_cell, element_).cells = cells;
            auto& dead = add(FaultKind::dead_cell, element_, ladder(least_dead_cell, most_worn, dead_cell_factor));
            dead.cells = cells;
            dead.is_multiple = true;
        }
        add(FaultKind::dead, element_);
    }

    void of_run(Run const& run, NetworkPart const& part) {
        auto const& drawn = part.elements.front();
        if (drawn.is == Element::Is::gap) return;
        add(FaultKind::missing, element_);
        add(FaultKind::resistive, element_, ladder(least_ohms, most_ohms, ohm_factor));
        for (bool const from_end : {true, false}) {
            auto const start = places_.of[static_cast<std::size_t>(from_end ? drawn.to : drawn.from)];
            auto const reached = within_reach(places_, start, run, part.kind, bank_.system);
            for (int t = 0; t < static_cast<int>(network_.terminals.size()); ++t) {
                auto const place = static_cast<std::size_t>(places_.of[static_cast<std::size_t>(t)]);
                if (t == drawn.from || t == drawn.to || !reached[place]) continue;
                auto& change = add(FaultKind::moved, element_);
                change.from_end = from_end;
                change.terminal = t;
            }
        }
    }

    void of_device(NetworkPart const& part) {
        for (std::size_t e = 0; e < part.elements.size(); ++e) {
            if (part.elements[e].is == Element::Is::gap) continue;
            add(FaultKind::open, element_ + e);
            add(FaultKind::resistive, element_ + e, ladder(least_ohms, most_ohms, ohm_factor));
        }
    }

    void of_plug(NetworkPart const& part) { // not home
        if (part.elements.size() == 2 && part.elements.front().is != Element::Is::gap)
            add(FaultKind::open, element_).elements = 2;
    }

    void of_load(NetworkPart const& part) {
        add(FaultKind::open, element_);
        add(FaultKind::stalled, element_, ladder(least_stalled, most_stalled, multiple_factor));
        exchange(part.elements.front().from, part.elements.front().to, 1);
    }

    void exchange(int plus, int minus, std::size_t elements) {
        auto& change = add(FaultKind::exchanged, element_);
        change.plus = plus;
        change.minus = minus;
        change.elements = elements;
    }

    Bank const& bank_;
    Network const& network_;
    Places const& places_;
    std::size_t part_ = 0, element_ = 0;
    std::vector<FaultChange> faults_;
};

// What is to be said of a fault beside its kind and its part.
inline std::string detail_of(FaultChange const& change, double low, double high, NetworkPart const& part,
                             std::size_t first_element) {
    bool const is_any =
        change.ladder.size() > 1 && low <= change.ladder[1] && high >= change.ladder[change.ladder.size() - 2];
    auto const times = [&](char const* what) {
        auto const count = [](double value) { return fmt::format("{:.1f}", value); };
        return is_any ? std::string() : about(count(low), count(high), what);
    };
    std::string detail;
    if (change.is_multiple && change.kind == FaultKind::resistive)
        detail = times(" times its internal resistance");
    else if (change.kind == FaultKind::resistive && !is_any)
        detail = about(print(rounded(low) * si::ohm), print(rounded(high) * si::ohm), " more than it should");
    if (change.kind == FaultKind::stalled) detail = times(" times its current");
    if (change.kind == FaultKind::low && !is_any)
        detail = about(fmt::format("{:.0f} %", low * 100), fmt::format("{:.0f} %", high * 100),
                       " below its voltage at rest");
    if (part.kind == PartKind::selector && part.elements.size() == 2) { // a contact of its own for each
        std::string const position = change.element == first_element ? "position 1" : "position 2";
        return detail.empty() ? position : position + ", " + detail;
    }
    if (part.kind != PartKind::connector) return detail;
    std::string const which = change.kind == FaultKind::exchanged
                                  ? (change.plus == part.elements.front().from ? "receptacle side" : "plug side")
                              : change.elements > 1             ? "both poles"
                              : change.element == first_element ? "positive pole"
                                                                : "negative pole";
    return detail.empty() ? which : which + ", " + detail;
}

} // namespace internal::fault_finding

BANKWRIGHT_INLINE std::vector<FaultChange> single_faults(Bank const& bank, Network const& network,
                                                         Places const& places) {
    return internal::fault_finding::FaultLister(bank, network, places).list();
}

BANKWRIGHT_INLINE Fault describe(FaultChange const& change, double low, double high, Network const& network) {
    auto const& part = network.parts[change.part];
    Fault fault{change.kind, part.id, {}, {}, {}, part.kind};
    std::size_t first = 0;
    for (std::size_t p = 0; p < change.part; ++p)
        first += network.parts[p].elements.size();
    fault.detail = internal::fault_finding::detail_of(change, low, high, part, first);
    if (change.kind == FaultKind::moved) {
        auto const name = [&](int terminal) { return network.terminals[static_cast<std::size_t>(terminal)]; };
        auto const& as_described = part.elements.front();
        fault.on = name(change.terminal);
        fault.instead_of = name(change.from_end ? as_described.from : as_described.to);
        fault.detail = fmt::format("on {} instead of {}", fault.on, fault.instead_of);
    }
    return fault;
}

} // namespace bankwright
