#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/drawing/layout/wiring_scheme.hpp"
#include "bankwright/wiring/wiring_graph.hpp"
#include "bankwright/wiring/wiring_loop.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <cmath>
#include <optional>
#include <unordered_map>
#include <unordered_set>
#include <utility>

namespace bankwright::drawing {

namespace internal {

class SchemeMaker {
public:
    explicit SchemeMaker(Bank const& bank)
        : bank_(bank), graph_(wiring_graph(bank)), verdict_(judge(graph_, graph_.edges)) {}

    Scheme make() {
        find_fault_loop();
        scheme_.series_wanted = series_wanted();
        for_each_part(bank_, [&](PartKind kind, auto const& part) { add(kind, part); });
        add_wires(PartKind::jumper, bank_.jumpers);
        add_wires(PartKind::cable, bank_.cables);
        return std::move(scheme_);
    }

private:
    int series_wanted() const {
        auto wanted = bank_.system.voltage;
        if (!wanted && !bank_.motors.empty()) wanted = bank_.motors.front().voltage;
        if (!wanted || bank_.batteries.empty() || !bank_.batteries.front().voltage) return 0;
        auto const count = std::round((*wanted / *bank_.batteries.front().voltage).value());
        return count >= 1.0 && count <= 1000.0 ? static_cast<int>(count) : 0;
    }

    void find_fault_loop() {
        std::optional<WiringLoop> shortest;
        for (auto const* batteries : {&verdict_.shorted, &verdict_.clashes}) {
            for (auto const battery : *batteries) {
                auto loop = shortest_loop(graph_, graph_.edges, battery);
                if (loop && (!shortest || loop->steps.size() < shortest->steps.size())) shortest = std::move(loop);
            }
            if (shortest) break;
        }
        if (!shortest) return;
        for (auto const& step : shortest->steps)
            looped_.insert(graph_.id(graph_.edges[static_cast<std::size_t>(step.edge)]));
    }

    void add(PartKind, Battery const& battery) {
        for (int t = 0; t < 2; ++t) {
            auto const name = battery.id + (t == 0 ? "+" : "-");
            ends_.emplace(name, End{true, scheme_.batteries, t});
            scheme_.battery_groups.push_back(verdict_.group_of(graph_.terminal_named.at(name)));
        }
        scheme_.battery_in_fault_loop.push_back(looped_.count(battery.id) > 0);
        ++scheme_.batteries;
    }
    void add(PartKind, Run const&) {}
    template <class Part>
    void add(PartKind kind, Part const& part) {
        auto const number = static_cast<int>(scheme_.equipment.size());
        Equipment equipment{kind, count_[kind]++, part.id, terminals_of(part), looped_.count(part.id) > 0};
        for (std::size_t t = 0; t < equipment.terminals.size(); ++t)
            ends_.emplace(equipment.terminals[t], End{false, number, static_cast<int>(t)});
        scheme_.equipment.push_back(std::move(equipment));
    }

    void add_wires(PartKind kind, std::vector<Run> const& runs) {
        for (std::size_t i = 0; i < runs.size(); ++i) {
            auto const from = ends_.find(runs[i].from);
            auto const to = ends_.find(runs[i].to);
            if (from == ends_.end() || to == ends_.end()) {
                scheme_.undrawn.push_back(runs[i].conductor.id);
                continue;
            }
            scheme_.wires.push_back(
                {kind, i, from->second, to->second, side_of(runs[i]), looped_.count(runs[i].conductor.id) > 0});
        }
    }

    WireSide side_of(Run const& run) const {
        auto const terminal = graph_.terminal_named.at(run.from);
        auto const potential = verdict_.potential_of(terminal);
        auto const top = verdict_.top[static_cast<std::size_t>(verdict_.island_of(terminal))];
        auto const claimed = claimed_side(run.conductor);
        // Behind a loop that does not add up to nothing potentials contradict each other: the color says more.
        bool const contradicted = !verdict_.shorted.empty() || !verdict_.clashes.empty();
        if (contradicted && claimed != ConductorSide::unmarked) return side_of(claimed);
        if (top > same_volts) {
            if (potential < same_volts) return WireSide::negative;
            if (potential > top - same_volts) return WireSide::positive;
        }
        if (claimed != ConductorSide::unmarked) return side_of(claimed);
        return side_by_loads(verdict_.group_of(terminal));
    }
    static WireSide side_of(ConductorSide claimed) {
        return claimed == ConductorSide::positive ? WireSide::positive : WireSide::negative;
    }
    // Part of the way up a string, or joined to no battery: what the motor or load says that it feeds.
    WireSide side_by_loads(int group) const {
        for (auto const& edge : graph_.edges) {
            if (edge.kind != WiringEdgeKind::load && edge.kind != WiringEdgeKind::charger) continue;
            if (verdict_.group_of(edge.from) == group) return WireSide::positive;
            if (verdict_.group_of(edge.to) == group) return WireSide::negative;
        }
        return WireSide::between;
    }

    Bank const& bank_;
    WiringGraph graph_;
    WiringVerdict verdict_;
    std::unordered_set<std::string> looped_;
    std::unordered_map<std::string, End> ends_;
    std::unordered_map<PartKind, std::size_t> count_;
    Scheme scheme_;
};

} // namespace internal

BANKWRIGHT_INLINE Scheme scheme_of(Bank const& bank) { return internal::SchemeMaker(bank).make(); }

} // namespace bankwright::drawing
