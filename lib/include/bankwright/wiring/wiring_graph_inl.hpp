#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/wiring/wiring_graph.hpp"

#include <cmath>
#include <optional>
#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE Voltage counted_voltage(Battery const& battery) {
    auto const nominal = nominal_voltage(battery).value();
    if (battery.chemistry == Chemistry::lifepo4 && std::abs(std::remainder(nominal, 12.0)) > 0.01) {
        auto const cells = std::round(nominal / 3.2); // 3.2 V a cell: 12.8, 25.6, 38.4, 51.2 V
        if (std::abs(nominal - 3.2 * cells) < 0.05) return cells * 3.0 * si::volt;
    }
    return nominal * si::volt;
}

BANKWRIGHT_INLINE ConductorSide claimed_side(Conductor const& conductor) {
    auto const color = conductor.color.value_or("");
    if (color == "red") return ConductorSide::positive;
    if (color == "black" || color == "yellow") return ConductorSide::negative;
    return ConductorSide::unmarked;
}

namespace internal {

// The voltage that a motor or load is meant to see: the system's, or where that is not declared the motor's own.
// Where a converter parts two voltages, the system's is that of one side only, and nothing says which.
inline double expected_volts(Bank const& bank, std::optional<Voltage> nameplate) {
    auto const& system = bank.system;
    if (system.voltage && bank.converters.empty()) return system.voltage->value();
    return nameplate ? nameplate->value() : 0.0;
}

class WiringGraphBuilder {
public:
    explicit WiringGraphBuilder(Bank const& bank) : bank_(bank) {
        std::size_t count[part_kind_names.size()] = {};
        for_each_part(bank, [&](PartKind kind, auto const& part) {
            auto const index = static_cast<int>(graph_.parts.size());
            graph_.parts.push_back({id_of(part), kind, count[static_cast<std::size_t>(kind)]++});
            graph_.part_named.emplace(id_of(part), index);
            for (auto& name : terminals_of(part)) {
                graph_.terminal_named.emplace(name, static_cast<int>(graph_.terminals.size()));
                graph_.terminals.push_back(std::move(name));
                graph_.owner.push_back(index);
            }
        });
        int part = 0;
        for_each_part(bank, [&](PartKind, auto const& p) { add(p, part++); });
        graph_.lithium = !bank.batteries.empty();
        for (auto const& battery : bank.batteries)
            graph_.lithium = graph_.lithium && battery.chemistry && is_lithium(*battery.chemistry);
    }

    WiringGraph take() { return std::move(graph_); }

private:
    int terminal(std::string const& name) const {
        auto const it = graph_.terminal_named.find(name);
        return it == graph_.terminal_named.end() ? -1 : it->second;
    }
    void edge(WiringEdgeKind kind, int part, std::string const& from, std::string const& to, double volts = 0.0) {
        auto const a = terminal(from);
        auto const b = terminal(to);
        if (a < 0 || b < 0) return;
        WiringEdge e;
        e.kind = kind;
        e.from = a;
        e.to = b;
        e.part = part;
        e.volts = volts;
        graph_.edges.push_back(e);
    }

    void add(Battery const& b, int part) {
        edge(WiringEdgeKind::battery, part, b.id + "-", b.id + "+", counted_voltage(b).value());
    }
    void add(Run const& run, int part) {
        auto const before = graph_.edges.size();
        edge(WiringEdgeKind::conductor, part, run.from, run.to);
        if (graph_.edges.size() > before) graph_.edges.back().side = claimed_side(run.conductor);
    }
    void add(ProtectiveDevice const& d, int part) {
        edge(WiringEdgeKind::contact, part, d.id + ".line", d.id + ".load");
        if (!d.on) return;
        auto const post = terminal(*d.on); // that it sits there is a contact of whatever the post belongs to
        if (post >= 0) edge(WiringEdgeKind::contact, graph_.owner[as_index(post)], *d.on, d.id + ".line");
    }
    void add(Switch const& s, int part) { edge(WiringEdgeKind::contact, part, s.id + ".1", s.id + ".2"); }
    void add(Shunt const& s, int part) { edge(WiringEdgeKind::contact, part, s.id + ".1", s.id + ".2"); }
    void add(Relay const& r, int part) { edge(WiringEdgeKind::contact, part, r.id + ".1", r.id + ".2"); }
    void add(Selector const& s, int part) {
        edge(WiringEdgeKind::contact, part, s.id + ".1", s.id + ".common");
        edge(WiringEdgeKind::contact, part, s.id + ".2", s.id + ".common");
    }
    void add(Converter const& c, int part) { // its input draws, its output gives
        edge(WiringEdgeKind::load, part, c.id + ".in+", c.id + ".in-");
        edge(WiringEdgeKind::charger, part, c.id + ".out+", c.id + ".out-");
        if (!c.isolated.value_or(true)) edge(WiringEdgeKind::contact, part, c.id + ".in-", c.id + ".out-");
    }
    void add(Busbar const&, int) {}
    void add(Connector const& c, int part) {
        edge(WiringEdgeKind::contact, part, c.id + "+", c.id + ".plug+");
        edge(WiringEdgeKind::contact, part, c.id + "-", c.id + ".plug-");
    }
    void add(Motor const& m, int part) {
        edge(WiringEdgeKind::load, part, m.id + "+", m.id + "-", expected_volts(bank_, m.voltage));
    }
    void add(Load const& l, int part) {
        edge(WiringEdgeKind::load, part, l.id + "+", l.id + "-", expected_volts(bank_, std::nullopt));
        if (!l.max_voltage) return; // without an upper bound it is no window: a low one alone lets anything through
        graph_.edges.back().least = l.min_voltage ? l.min_voltage->value() : 0.0;
        graph_.edges.back().most = l.max_voltage->value();
    }
    void add(Charger const& c, int part) {
        for (int output = 1; output <= c.outputs.value_or(1); ++output) {
            auto const stem = c.id + "." + std::to_string(output);
            edge(WiringEdgeKind::charger, part, stem + "+", stem + "-");
            if (output > 1 && !c.isolated.value_or(true)) edge(WiringEdgeKind::contact, part, c.id + ".1-", stem + "-");
        }
    }

    Bank const& bank_;
    WiringGraph graph_;
};

} // namespace internal

BANKWRIGHT_INLINE WiringGraph wiring_graph(Bank const& bank) { return internal::WiringGraphBuilder(bank).take(); }

} // namespace bankwright
