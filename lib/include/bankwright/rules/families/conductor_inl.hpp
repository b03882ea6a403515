#pragma once

#include "bankwright/devices/conductor_ampacity.hpp"
#include "bankwright/devices/conductor_heating.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/devices/conductor_voltage_drop.hpp"
#include "bankwright/rules/families/conductor.hpp"
#include "bankwright/rules/families/nameplate_words.hpp"
#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/wiring/battery_rings.hpp"
#include "bankwright/wiring/wiring_regions.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal {

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
        undersized_jumpers();
        unequal_links();
    }

private:
    void over_ampacity(Conductor const& conductor) {
        auto const borne = borne_by(seen_, conductor.id);
        auto const limit = ampacity(conductor, bank_.system.ambient);
        if (!borne || !limit) return;
        auto const found = borne->most;
        if (!exceeds(found, limit->current)) return;
        constexpr auto rule = rule_named(conductor_rules, "conductor/over-ampacity");
        auto why = fmt::format("{} at {} insulation", print(WireSize(limit->gauge)), print(limit->insulation));
        if (limit->insulation_assumed) why += ", assumed, as no `insulation` is stated";
        if (limit->surroundings < 1.0)
            why += fmt::format(", {:.0f} % for warm surroundings", 100 * limit->surroundings);
        if (limit->bundling < 1.0) why += fmt::format(", {:.0f} % for bundling", 100 * limit->bundling);
        auto finding = finding_of(rule,
                                  fmt::format("`{}` carries {}{}, at most {} ({})", conductor.id, print(found),
                                              borne->rests_on_nameplate() ? " by the nameplates downstream" : "",
                                              print(limit->current), why),
                                  thicker(conductor, found));
        measured(finding, found.value(), limit->current.value(), "A").parts = {conductor.id};
        soften_above_nameplate(finding, *borne, limit->current);
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
                                              negative   ? "expected black or yellow"
                                              : positive ? "expected red"
                                                         : "where green is never used"),
                                  std::string(rule.fix));
        finding.parts = {conductor.id};
        finding.key = "color";
        findings_.push_back(std::move(finding));
    }

    // What is lost on the way to one load and back.
    struct Drop {
        std::string load;
        double lost = 0.0;                                 // [V]
        double system = 0.0;                               // [V]
        double allowed = 0.0;                              // [V]
        std::vector<std::pair<double, std::string>> where; // [V], part; the worst first
        double most = 0.0;                                 // [V] above it no circuit is content

        bool is_error() const { return exceeds(lost, most); }
    };

    // From the battery posts joined to a load's terminals, whichever loses most, to those terminals. Loads that lose it
    // in the same part share one finding.
    void voltage_drops() {
        if (seen_.verdict().loads.empty()) return;
        std::vector<std::vector<Drop>> causes;
        for (auto const& load : seen_.verdict().loads) {
            auto const cranks = is_starter(load);
            if (cranks && seen_.cranking().status != solver::Status::solved) continue;
            volts_.assign(graph_.terminals.size(), std::nullopt);
            for (auto const& reading : (cranks ? seen_.cranking() : seen_.full()).terminals)
                volts_[static_cast<std::size_t>(graph_.terminal_named.at(reading.name))] = reading.voltage;
            auto drop = drop_to(load);
            if (!drop) continue;
            auto const same = std::find_if(causes.begin(), causes.end(), [&](auto const& drops) {
                auto const& other = drops.front();
                return !drop->where.empty() && !other.where.empty() &&
                       other.where.front().second == drop->where.front().second && other.is_error() == drop->is_error();
            });
            if (same == causes.end())
                causes.push_back({std::move(*drop)});
            else
                same->push_back(std::move(*drop));
        }
        for (auto& drops : causes) {
            std::stable_sort(drops.begin(), drops.end(),
                             [](auto const& a, auto const& b) { return a.lost / a.system > b.lost / b.system; });
            say_drop(drops);
        }
    }

    static constexpr double most_for_a_starter = 0.10;

    bool is_starter(LoadVerdict const& load) const {
        auto const& part =
            graph_.parts[static_cast<std::size_t>(graph_.edges[static_cast<std::size_t>(load.edge)].part)];
        return part.kind == PartKind::load && bankwright::is_starter(bank_.loads[part.index]);
    }

    std::optional<Drop> drop_to(LoadVerdict const& load) const {
        auto const& edge = graph_.edges[static_cast<std::size_t>(load.edge)];
        auto const& standing = seen_.standing_verdict();
        auto const system = load.volts; // [V] nominal: what taps a string is held to the voltage that it is made for
        auto const plus = voltage_at(edge.from);
        auto const minus = voltage_at(edge.to);
        if (load.state != FeedState::fed || !plus || !minus || system <= 0.0) return std::nullopt;
        double out = 0.0;  // [V]
        double back = 0.0; // [V]
        auto const bank = bank_at(load.edge);
        auto const& bank_of = seen_.bank_when_parted();
        auto counted = bank_of.begin();
        for (auto const& battery : graph_.edges) {
            if (battery.kind != WiringEdgeKind::battery) continue;
            if (auto const its_bank = *counted++; bank && its_bank != *bank) continue;
            auto const source = voltage_at(battery.to);
            auto const sink = voltage_at(battery.from);
            if (source && standing.group_of(battery.to) == standing.group_of(edge.from))
                out = std::max(out, source->value() - plus->value());
            if (sink && standing.group_of(battery.from) == standing.group_of(edge.to))
                back = std::max(back, minus->value() - sink->value());
        }
        auto const beyond = beyond_the_solved(load.edge);
        auto lost = out + back;
        for (auto const& [id, volts] : beyond)
            lost += volts;
        // 3 % unless the file wants another: ABYC E-11 11.14.2.6 [quoted: owners' forum]. A starter still turns
        // with a tenth lost: common practice, no source.
        auto const wanted = bank_.system.drop ? bank_.system.drop->value() : 0.03;
        auto const critical = is_starter(load) ? most_for_a_starter : wanted;
        if (!exceeds(lost, critical * system)) return std::nullopt;
        Drop drop{graph_.id(edge), lost, system, critical * system, losses_on_the_way(load.edge, beyond)};
        drop.most = std::max(0.10, critical) * system;
        if (drop.is_error()) drop.allowed = drop.most;
        return drop;
    }

    // Of two banks that a switch joins, the one at hand feeds the load: what the other sends over is a help. None where
    // the switch parts the load from that one.
    std::optional<int> bank_at(int load_edge) const {
        auto const& bank_of = seen_.bank_when_parted();
        auto const path = supply_path(graph_, load_edge);
        auto const& standing = seen_.standing_verdict();
        std::size_t b = 0;
        for (auto const& battery : graph_.edges) {
            if (battery.kind != WiringEdgeKind::battery) continue;
            auto const bank = bank_of[b++];
            auto const& load = graph_.edges[static_cast<std::size_t>(load_edge)];
            auto const starts = [&](int e) {
                auto const& wire = graph_.edges[static_cast<std::size_t>(e)];
                return wire.from == battery.to || wire.to == battery.to;
            };
            bool const begins = !path.empty() && starts(path.front());
            if (begins && standing.group_of(battery.to) == standing.group_of(load.from)) return bank;
        }
        return std::nullopt;
    }

    // [V] What the conductors on the way lose beyond the solved network, whose copper is as cold as its surroundings:
    // it is as warm as its current makes it, and never better than ABYC's formula has it at the current on the
    // nameplate, which a motor starved by thin copper does not reach.
    std::map<std::string, double> beyond_the_solved(int load_edge) const {
        auto const& load = graph_.edges[static_cast<std::size_t>(load_edge)];
        auto const* drawn = reading_if_any(seen_.full(), graph_.id(load));
        auto const taken = drawn ? std::abs(drawn->current.value()) : 0.0;
        auto const starved = taken > 0.0 ? std::max(1.0, on_nameplate(load) / taken) : 1.0;
        std::map<std::string, double> more;
        for (auto const e : supply_path(graph_, load_edge)) {
            auto const& edge = graph_.edges[static_cast<std::size_t>(e)];
            if (edge.kind != WiringEdgeKind::conductor) continue;
            auto const& conductor = run_of(bank_, graph_, edge).conductor;
            auto const* reading = reading_if_any(seen_.full(), conductor.id);
            if (!reading || conductor.resistance || !conductor.size || !conductor.length) continue;
            auto const amps = std::abs(reading->current.value()) * si::ampere;
            auto const solved = *wire_resistance(conductor, conductor.temperature.value_or(bank_.system.ambient));
            auto const hot = *wire_resistance(conductor, copper_temperature(conductor, amps, bank_.system.ambient));
            auto const formula = abyc_drop(starved * amps, *conductor.length, *conductor.size);
            more[conductor.id] =
                std::max(0.0, std::max(Voltage(hot * amps), formula).value() - Voltage(solved * amps).value());
        }
        return more;
    }

    // [A] 0 of what has none.
    double on_nameplate(WiringEdge const& load) const {
        auto const& part = graph_.parts[static_cast<std::size_t>(load.part)];
        if (part.kind != PartKind::motor) return 0.0;
        auto const amps = nameplate_current(bank_.motors[part.index]);
        return amps ? amps->value() : 0.0;
    }

    void say_drop(std::vector<Drop> const& drops) {
        constexpr auto rule = rule_named(conductor_rules, "conductor/voltage-drop");
        auto const& worst = drops.front();
        auto message = fmt::format("{} of {} is lost out and back to `{}` ({:.1f} %), at most {:.3g} %",
                                   print(worst.lost * si::volt), print(worst.system * si::volt), worst.load,
                                   100 * worst.lost / worst.system, 100 * worst.allowed / worst.system);
        std::vector<std::string> loads;
        for (auto const& drop : drops)
            loads.push_back(drop.load);
        if (loads.size() > 1)
            message += fmt::format("; {} too", quoted_list(std::vector<std::string>(loads.begin() + 1, loads.end())));
        auto help = std::string("use thicker or shorter conductors; most is lost in");
        for (std::size_t i = 0; i < worst.where.size() && i < 3; ++i)
            help += fmt::format("{} `{}` ({:.0f} %)", i == 0 ? "" : ",", worst.where[i].second,
                                100 * worst.where[i].first / worst.lost);
        auto finding = finding_of(rule, std::move(message), std::move(help));
        finding.level = worst.is_error() ? Level::error : Level::warning;
        measured(finding, worst.lost, worst.allowed, "V").parts = std::move(loads);
        findings_.push_back(std::move(finding));
    }

    // The parts between the nearest posts and a load, with what each loses [V], the worst first.
    std::vector<std::pair<double, std::string>> losses_on_the_way(int load_edge,
                                                                  std::map<std::string, double> lost) const {
        // both poles of a connector count together
        for (auto const e : supply_path(graph_, load_edge)) {
            auto const& edge = graph_.edges[static_cast<std::size_t>(e)];
            auto const from = voltage_at(edge.from);
            auto const to = voltage_at(edge.to);
            if (from && to) lost[graph_.id(edge)] += std::abs((*from - *to).value());
        }
        std::vector<std::pair<double, std::string>> losses;
        for (auto const& [id, volts] : lost)
            losses.emplace_back(volts, id);
        std::stable_sort(losses.begin(), losses.end(), [](auto const& a, auto const& b) { return a.first > b.first; });
        return losses;
    }

    // The main cable is the one at an end of the bank that carries most, the thickest of them; jumpers that carry no
    // less are in series with it, wherever the file lists it. A string's share is less, and ampacity judges it.
    void undersized_jumpers() {
        if (!seen_.full_is_sound()) return;
        constexpr double same = 0.99; // parts of one current
        auto const main = main_cable(same);
        if (!main) return;
        constexpr auto rule = rule_named(conductor_rules, "conductor/undersized-jumper");
        for (auto const& edge : graph_.edges) {
            if (!joins_batteries(edge)) continue;
            auto const& jumper = run_of(bank_, graph_, edge).conductor;
            auto const here = borne_by(seen_, jumper.id);
            if (!jumper.size || !here || here->most < same * main->carries) continue;
            if (!exceeds(main->conductor->size->area(), jumper.size->area())) continue;
            auto finding =
                finding_of(rule,
                           fmt::format("`{}` is {}, the main cable `{}` in series with it is {}", jumper.id,
                                       print(*jumper.size), main->conductor->id, print(*main->conductor->size)),
                           std::string(rule.fix));
            measured(finding, jumper.size->area().value() * 1e6, main->conductor->size->area().value() * 1e6, "mm2")
                .parts = {jumper.id, main->conductor->id};
            finding.key = "size";
            findings_.push_back(std::move(finding));
        }
    }

    struct MainCable {
        Conductor const* conductor = nullptr;
        Current carries{};
    };
    std::optional<MainCable> main_cable(double same) const {
        auto const& form = seen_.arrangement();
        std::vector<MainCable> leaving; // the ends of the bank
        Current most{};
        for (auto const& edge : graph_.edges) {
            if (edge.kind != WiringEdgeKind::conductor || joins_batteries(edge)) continue;
            auto const group = seen_.standing_verdict().group_of(edge.from);
            if (group != form.positive_group && group != form.negative_group) continue;
            auto const& conductor = run_of(bank_, graph_, edge).conductor;
            auto const borne = borne_by(seen_, conductor.id);
            if (!conductor.size || !borne) continue;
            leaving.push_back({&conductor, borne->most});
            most = std::max(most, borne->most);
        }
        std::optional<MainCable> main;
        for (auto const& one : leaving)
            if (most.value() > 0.0 && one.carries >= same * most &&
                (!main || one.conductor->size->area() > main->conductor->size->area()))
                main = one;
        return main;
    }

    bool joins_batteries(WiringEdge const& edge) const {
        return edge.kind == WiringEdgeKind::conductor && graph_.owner_of(edge.from).kind == PartKind::battery &&
               graph_.owner_of(edge.to).kind == PartKind::battery;
    }

    // Links of one side that do the same work: between the same kinds of part, at the same end of the strings. That
    // takes one from every string to a common point, or all those of a chain; where two strings share one, it may be
    // larger.
    void unequal_links() {
        auto const& form = seen_.arrangement();
        if (!seen_.verdict().right()) return;
        std::map<std::pair<std::string, int>, std::vector<Conductor const*>> alike; // by role and how many it takes
        auto const between_strings = on_rings_of_batteries(graph_, true);
        for (std::size_t e = 0; e < graph_.edges.size(); ++e) {
            auto const& edge = graph_.edges[e];
            if (edge.kind != WiringEdgeKind::conductor || !between_strings[e]) continue;
            auto const group = seen_.standing_verdict().group_of(edge.from);
            if (group != form.positive_group && group != form.negative_group) continue;
            if (!is_in(form, edge.from) || !is_in(form, edge.to)) continue;
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
            alike[{fmt::format("{} {}-{}", side, name(kinds.first), name(kinds.second)),
                   form.parallel - (link ? 1 : 0)}]
                .push_back(&run_of(bank_, graph_, edge).conductor);
        }
        constexpr auto rule = rule_named(conductor_rules, "conductor/unequal-links");
        for (auto const& [role, links] : alike) {
            if (links.size() < static_cast<std::size_t>(role.second)) continue;
            std::vector<std::string> differing;
            for (auto const* link : links)
                if (!(link->size == links.front()->size && link->length == links.front()->length &&
                      link->resistance == links.front()->resistance))
                    differing.push_back(link->id);
            if (differing.empty()) continue;
            auto finding = finding_of(
                rule,
                fmt::format("{} {} in size or length from `{}`, which does the same work at another "
                            "string",
                            quoted_list(differing), differing.size() == 1 ? "differs" : "differ", links.front()->id),
                std::string(rule.fix));
            finding.parts = differing;
            finding.parts.push_back(links.front()->id);
            findings_.push_back(std::move(finding));
        }
    }

    // False of a post of a bank that a switch can part from the first string's.
    bool is_in(Arrangement const& form, int terminal) const {
        auto const& owner = graph_.owner_of(terminal);
        if (owner.kind != PartKind::battery || form.strings.empty() || form.strings.front().empty()) return true;
        auto const& bank_of = seen_.bank_when_parted();
        auto const& first = graph_.edges[static_cast<std::size_t>(form.strings.front().front())];
        return bank_of[owner.index] == bank_of[graph_.parts[static_cast<std::size_t>(first.part)].index];
    }

    std::optional<Voltage> voltage_at(int terminal) const { return volts_[static_cast<std::size_t>(terminal)]; }

    Seen const& seen_;
    Bank const& bank_;
    WiringGraph const& graph_;
    Findings& findings_;
    std::vector<std::optional<Voltage>> volts_; // by terminal, with every load at full: once a drop is asked for
};

} // namespace internal

BANKWRIGHT_INLINE void check_conductors(Seen const& seen, Findings& findings) {
    internal::ConductorInspector(seen, findings).inspect();
}

} // namespace bankwright
