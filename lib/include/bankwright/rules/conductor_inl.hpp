#pragma once

#include "bankwright/analyses/blocks.hpp"
#include "bankwright/devices/conductor_ampacity.hpp"
#include "bankwright/rules/conductor.hpp"
#include "bankwright/rules/wiring_words_inl.hpp"
#include "bankwright/units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

// The run of a conductor edge.
inline Run const& run_of(Bank const& bank, WiringGraph const& graph, WiringEdge const& edge) {
    auto const& part = graph.parts[static_cast<std::size_t>(edge.part)];
    return (part.kind == PartKind::jumper ? bank.jumpers : bank.cables)[part.index];
}

class ConductorInspector {
public:
    ConductorInspector(Seen const& seen, Findings& findings)
        : seen_(seen), bank_(seen.bank()), graph_(seen.graph()), findings_(findings) {}

    void inspect() {
        for (auto const& edge : graph_.edges) {
            if (edge.kind != WiringEdgeKind::conductor) continue;
            auto const& conductor = run_of(bank_, graph_, edge).conductor;
            if (seen_.full_is_sound()) over_ampacity(conductor);
            too_small(conductor);
            if (seen_.verdict().right()) color(edge, conductor);
        }
        if (seen_.full_is_sound()) voltage_drops();
        thin_jumpers();
        unequal_links();
    }

private:
    void over_ampacity(Conductor const& conductor) {
        auto const* reading = reading_if_any(seen_.full(), conductor.id);
        auto const limit = ampacity(conductor, bank_.system.ambient);
        if (!reading || !limit) return;
        auto const found = std::abs(reading->current.value()) * si::ampere;
        if (found <= limit->current) return;
        constexpr auto rule = rule_named(conductor_rules, "conductor/over-ampacity");
        auto why = fmt::format("{} at {} insulation", print(WireSize(limit->gauge)), print(limit->insulation));
        if (limit->insulation_assumed) why += ", assumed for want of `insulation`";
        if (limit->surroundings < 1.0) why += fmt::format(", {:.0f} % for its surroundings", 100 * limit->surroundings);
        if (limit->bundling < 1.0) why += fmt::format(", {:.0f} % for bundling", 100 * limit->bundling);
        auto finding = finding_of(
            rule,
            fmt::format("`{}` carries {}, at most {} ({})", conductor.id, print(found), print(limit->current), why),
            thicker(conductor, found));
        measured(finding, found.value(), limit->current.value(), "A").parts = {conductor.id};
        finding.key = "size";
        findings_.push_back(std::move(finding));
    }

    // The smallest gauge that carries it as it is laid.
    std::string thicker(Conductor conductor, Current current) const {
        for (int number = 18; number >= -3; --number) {
            conductor.size = WireSize(Awg{number});
            auto const limit = ampacity(conductor, bank_.system.ambient);
            if (limit && limit->current >= current)
                return fmt::format("use {} or thicker for `{}`", print(*conductor.size), conductor.id);
        }
        return fmt::format("share the current of `{}` between several conductors, each with its own device",
                           conductor.id);
    }

    void too_small(Conductor const& conductor) {
        if (!conductor.size) return;
        bool const sheathed = conductor.enclosed.value_or(false);
        constexpr auto rule = rule_named(conductor_rules, "conductor/too-small");
        auto const least =
            conductor.size->gauge() ? area(Awg{sheathed ? 18 : 16}) : (sheathed ? 0.75e-6 : 1e-6) * si::square_meter;
        if (conductor.size->area() >= least * (1.0 - 1e-9)) return;
        auto const least_name =
            conductor.size->gauge() ? print(WireSize(Awg{sheathed ? 18 : 16})) : print(WireSize(least));
        auto finding = finding_of(rule,
                                  fmt::format("`{}` is {}, at least {} {}", conductor.id, print(*conductor.size),
                                              least_name, sheathed ? "in a sheath" : "run separately"),
                                  std::string(rule.fix));
        measured(finding, conductor.size->area().value() * 1e6, least.value() * 1e6, "mm2").parts = {conductor.id};
        finding.key = "size";
        findings_.push_back(std::move(finding));
    }

    void color(WiringEdge const& edge, Conductor const& conductor) {
        if (!conductor.color) return;
        auto const& verdict = seen_.verdict();
        auto const top = verdict.top[static_cast<std::size_t>(verdict.island_of(edge.from))];
        if (top < same_volts) return; // on no battery
        auto const volts = verdict.potential_of(edge.from);
        bool const negative = volts < same_volts;
        bool const positive = volts > top - same_volts;
        bool const wrong = (negative && edge.side == ConductorSide::positive) ||
                           (positive && edge.side == ConductorSide::negative) || *conductor.color == "green";
        if (!wrong) return;
        constexpr auto rule = rule_named(conductor_rules, "conductor/color");
        auto const where = negative   ? "the negative side"
                           : positive ? "the positive side"
                                      : "a current-carrying conductor";
        auto finding = finding_of(rule,
                                  fmt::format("`{}` is {} on {}, {}", conductor.id, *conductor.color, where,
                                              negative   ? "which is black or yellow"
                                              : positive ? "which is red"
                                                         : "which is never green"),
                                  std::string(rule.fix));
        finding.parts = {conductor.id};
        finding.key = "color";
        findings_.push_back(std::move(finding));
    }

    // From the battery posts joined to a load's terminals, whichever loses most, to those terminals.
    void voltage_drops() {
        constexpr auto rule = rule_named(conductor_rules, "conductor/voltage-drop");
        for (auto const& load : seen_.verdict().loads) {
            auto const& edge = graph_.edges[static_cast<std::size_t>(load.edge)];
            auto const system = bank_.system.voltage ? bank_.system.voltage->value() : load.volts; // [V]
            auto const plus = voltage_of(seen_.full(), graph_.name(edge.from));
            auto const minus = voltage_of(seen_.full(), graph_.name(edge.to));
            if (load.state != FeedState::fed || !plus || !minus || system <= 0.0) continue;
            double out = 0.0;  // [V]
            double back = 0.0; // [V]
            for (auto const& battery : graph_.edges) {
                if (battery.kind != WiringEdgeKind::battery) continue;
                auto const source = voltage_of(seen_.full(), graph_.name(battery.to));
                auto const sink = voltage_of(seen_.full(), graph_.name(battery.from));
                auto const& verdict = seen_.verdict();
                if (source && verdict.group_of(battery.to) == verdict.group_of(edge.from))
                    out = std::max(out, source->value() - plus->value());
                if (sink && verdict.group_of(battery.from) == verdict.group_of(edge.to))
                    back = std::max(back, minus->value() - sink->value());
            }
            auto const lost = out + back;
            constexpr double critical = 0.03; // ABYC E-11 11.14.2.6 [read twice]
            constexpr double most = 0.10;
            if (lost <= critical * system) continue;
            bool const error = lost > most * system;
            auto const allowed = (error ? most : critical) * system;
            auto const& id = graph_.id(edge);
            auto finding = finding_of(rule,
                                      fmt::format("{} of {} are lost out and back to `{}` ({:.1f} %), at most {:.0f} %",
                                                  print(lost * si::volt), print(system * si::volt), id,
                                                  100 * lost / system, 100 * allowed / system),
                                      worst_losses(lost));
            finding.level = error ? Level::error : Level::warning;
            measured(finding, lost, allowed, "V").parts = {id};
            findings_.push_back(std::move(finding));
        }
    }

    // Where the voltage goes: the three parts that lose most.
    std::string worst_losses(double lost) const {
        std::vector<std::pair<double, std::string>> losses; // [V]
        for (auto const& part : seen_.full().parts) {
            if (part.kind == PartKind::battery || part.kind == PartKind::motor || part.kind == PartKind::load) continue;
            if (part.kind == PartKind::charger || part.kind == PartKind::busbar) continue;
            auto const volts = part.kind == PartKind::connector && part.current.value() != 0.0
                                   ? part.power.value() / part.current.value()
                                   : part.voltage.value();
            if (std::isfinite(volts)) losses.emplace_back(std::abs(volts), part.id);
        }
        std::stable_sort(losses.begin(), losses.end(), [](auto const& a, auto const& b) { return a.first > b.first; });
        std::string text = "use thicker or shorter conductors; most is lost in";
        for (std::size_t i = 0; i < losses.size() && i < 3; ++i)
            text +=
                fmt::format("{} `{}` ({:.0f} %)", i == 0 ? "" : ",", losses[i].second, 100 * losses[i].first / lost);
        return text;
    }

    // Only a bank of one string: in several strings a jumper carries its string's share, and ampacity judges it.
    void thin_jumpers() {
        if (seen_.arrangement().parallel != 1 || seen_.arrangement().form != ArrangementForm::strings) return;
        Run const* main = nullptr;
        for (auto const& cable : bank_.cables)
            if (cable.conductor.size && (!main || cable.conductor.size->area() > main->conductor.size->area()))
                main = &cable;
        if (!main) return;
        constexpr auto rule = rule_named(conductor_rules, "conductor/thin-jumper");
        for (auto const& edge : graph_.edges) {
            if (edge.kind != WiringEdgeKind::conductor) continue;
            auto const& conductor = run_of(bank_, graph_, edge).conductor;
            bool const between_batteries = graph_.owner_of(edge.from).kind == PartKind::battery &&
                                           graph_.owner_of(edge.to).kind == PartKind::battery;
            if (!between_batteries || !conductor.size) continue;
            if (conductor.size->area() >= main->conductor.size->area() * (1.0 - 1e-9)) continue;
            auto finding =
                finding_of(rule,
                           fmt::format("`{}` is {}, the main cable `{}` in series with it is {}", conductor.id,
                                       print(*conductor.size), main->conductor.id, print(*main->conductor.size)),
                           std::string(rule.fix));
            measured(finding, conductor.size->area().value() * 1e6, main->conductor.size->area().value() * 1e6, "mm2")
                .parts = {conductor.id, main->conductor.id};
            finding.key = "size";
            findings_.push_back(std::move(finding));
        }
    }

    // By edge: it lies on a closed path with a battery, every load taken off. A lead to a load does not.
    std::vector<char> on_rings_of_batteries() const {
        std::vector<BlockEdge> wires;
        std::vector<std::size_t> which;
        for (std::size_t e = 0; e < graph_.edges.size(); ++e) {
            auto const& edge = graph_.edges[e];
            if (edge.kind == WiringEdgeKind::load || edge.kind == WiringEdgeKind::charger || edge.from == edge.to)
                continue;
            wires.push_back({edge.from, edge.to});
            which.push_back(e);
        }
        std::vector<char> on_ring(graph_.edges.size(), 0);
        for (auto const& block : blocks(static_cast<int>(graph_.terminals.size()), wires)) {
            auto const is_battery = [&](int b) {
                return graph_.edges[which[static_cast<std::size_t>(b)]].kind == WiringEdgeKind::battery;
            };
            if (block.size() < 2 || std::none_of(block.begin(), block.end(), is_battery)) continue;
            for (auto const b : block)
                on_ring[which[static_cast<std::size_t>(b)]] = 1;
        }
        return on_ring;
    }

    // Links of one side that do the same work: between the same kinds of part, at the same end of the strings.
    void unequal_links() {
        auto const& form = seen_.arrangement();
        if (form.parallel < 2 || !seen_.verdict().right()) return;
        std::map<std::string, std::vector<Conductor const*>> alike;
        auto const between_strings = on_rings_of_batteries();
        for (std::size_t e = 0; e < graph_.edges.size(); ++e) {
            auto const& edge = graph_.edges[e];
            if (edge.kind != WiringEdgeKind::conductor || !between_strings[e]) continue;
            auto const group = seen_.verdict().group_of(edge.from);
            if (group != form.positive_group && group != form.negative_group) continue;
            auto kinds = std::pair(graph_.owner_of(edge.from).kind, graph_.owner_of(edge.to).kind);
            if (kinds.first > kinds.second) std::swap(kinds.first, kinds.second);
            auto const in_bank = [](PartKind k) {
                return k == PartKind::battery || k == PartKind::fuse || k == PartKind::breaker;
            };
            bool const link = in_bank(kinds.first) && kinds.first == kinds.second;
            bool const star =
                kinds.first == PartKind::battery && (kinds.second == PartKind::busbar || in_bank(kinds.second));
            if (!link && !star) continue;
            auto const side = group == form.positive_group ? "positive" : "negative";
            alike[fmt::format("{} {}-{}", side, name(kinds.first), name(kinds.second))].push_back(
                &run_of(bank_, graph_, edge).conductor);
        }
        constexpr auto rule = rule_named(conductor_rules, "conductor/unequal-links");
        for (auto const& [role, links] : alike) {
            if (links.size() < static_cast<std::size_t>(form.parallel) - 1 || links.size() < 2) continue;
            std::vector<std::string> differing;
            for (auto const* link : links)
                if (!(link->size == links.front()->size && link->length == links.front()->length &&
                      link->resistance == links.front()->resistance))
                    differing.push_back(link->id);
            if (differing.empty()) continue;
            auto finding =
                finding_of(rule,
                           fmt::format("{} differ in size or length from `{}`, which does the same work at another "
                                       "string",
                                       quoted_list(differing), links.front()->id),
                           std::string(rule.fix));
            finding.parts = differing;
            finding.parts.push_back(links.front()->id);
            findings_.push_back(std::move(finding));
        }
    }

    Seen const& seen_;
    Bank const& bank_;
    WiringGraph const& graph_;
    Findings& findings_;
};

BANKWRIGHT_INLINE void check_conductors(Seen const& seen, Findings& findings) {
    ConductorInspector(seen, findings).inspect();
}

} // namespace bankwright
