#pragma once

#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/rules/families/wiring.hpp"
#include "bankwright/rules/families/wiring_ends.hpp"
#include "bankwright/rules/families/wiring_shape.hpp"
#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/wiring/wiring_loop.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal {

// One wrong wiring is one cause and many consequences. The causes are the steps of the repair plan; what rule a cause
// belongs to is decided by the worst thing that it does.
class WiringInspector {
public:
    WiringInspector(Seen const& seen, Findings& findings)
        : seen_(seen), graph_(seen.graph()), findings_(findings), edges_(with_parallel_voltages_alike()),
          shape_(seen, edges_, findings) {}

    void inspect() {
        if (!seen_.whole()) return say_shorts();
        constexpr auto unequal_strings = rule_named(wiring_rules, "wiring/unequal-strings");
        constexpr auto mid_string_tap = rule_named(wiring_rules, "wiring/mid-string-tap");
        constexpr auto uneven_cross_links = rule_named(wiring_rules, "wiring/uneven-cross-links");
        constexpr auto missing_link = rule_named(wiring_rules, "wiring/missing-link");
        constexpr auto open_circuit = rule_named(wiring_rules, "wiring/open-circuit");
        constexpr auto loose_end = rule_named(wiring_rules, "wiring/loose-end");
        auto const verdict = judge(graph_, edges_);
        if (!verdict.right()) {
            auto const plan = plan_repair(graph_, edges_);
            bool const mends_well = !plan.steps.empty() && plan.steps.front().front().wrongs == 0 &&
                                    plan.steps.front().front().irregular == 0;
            if (mends_well || !shape_.say_unequal_strings(unequal_strings, verdict)) follow(plan);
        }
        shape_.say_taps(mid_string_tap, verdict);
        if (verdict.right()) {
            shape_.say_unequal_strings(unequal_strings, verdict);
            shape_.say_uneven_cross_links(uneven_cross_links, verdict);
            say_missing_links(missing_link, graph_, edges_, verdict, seen_.bank().batteries, findings_);
            say_idle_chargers(open_circuit, graph_, edges_, verdict, findings_);
            constexpr auto past_shunt = rule_named(wiring_rules, "wiring/past-shunt");
            say_past_shunts(past_shunt, seen_, findings_);
        }
        shape_.say_loose_ends(loose_end, verdict.right());
    }

private:
    using Edges = std::vector<WiringEdge>;

    WiringEdge const& edge(int e) const { return edges_[static_cast<std::size_t>(e)]; }
    WiringPart const& part(WiringEdge const& e) const { return graph_.parts[static_cast<std::size_t>(e.part)]; }

    // Batteries of different voltage straight across each other are a bad match, not a bad wiring:
    // matching/mixed-voltage speaks of them. Here they count as alike, so that the rest of the wiring can still be
    // judged.
    Edges with_parallel_voltages_alike() const {
        auto edges = graph_.edges;
        // What a charger joins inside is charging/not-isolated's to say.
        if (seen_.common_negative_shorts())
            for (auto& e : edges)
                e.removed = e.kind == WiringEdgeKind::contact && part(e).kind == PartKind::charger;
        auto const verdict = judge(graph_, edges);
        for (auto const clash : verdict.clashes) {
            auto& late = edges[static_cast<std::size_t>(clash)];
            for (auto const& early : edges) {
                if (early.kind != WiringEdgeKind::battery || &early == &late) continue;
                if (verdict.group_of(early.from) == verdict.group_of(late.from) &&
                    verdict.group_of(early.to) == verdict.group_of(late.to))
                    late.volts = early.volts;
            }
        }
        return edges;
    }

    // --- the causes, one finding each -------------------------------------------------------------------------------
    void follow(RepairPlan const& plan) {
        auto now = edges_;
        for (auto const& step : plan.steps) {
            auto const verdict = judge(graph_, now);
            auto const next = repaired(now, step.front());
            findings_.push_back(explain(now, verdict, step, next));
            now = next;
        }
        if (!plan.complete) {
            auto const verdict = judge(graph_, now);
            findings_.push_back(explain(now, verdict, {}, now));
        }
    }

    // Where parts are missing a loop is one whatever they are, but what would mend it hangs on them. Each loop is said,
    // and then thought open at one of its batteries.
    void say_shorts() {
        auto now = edges_;
        for (auto verdict = judge(graph_, now);; verdict = judge(graph_, now)) {
            auto const found = worst_loop(now, verdict, now);
            if (!found) return;
            auto finding = explain_loop(
                now, *found, false, "a short",
                "open this loop; which end in it is on the wrong post can be told once every part is stated");
            for (auto const& s : found->loop.steps)
                finding.parts.push_back(graph_.id(edge(s.edge)));
            keep_first_of_each(finding.parts);
            findings_.push_back(std::move(finding));
            for (auto const& s : found->loop.steps)
                if (edge(s.edge).kind == WiringEdgeKind::battery) {
                    now[static_cast<std::size_t>(s.edge)].removed = true;
                    break;
                }
        }
    }

    Finding explain(Edges const& now, WiringVerdict const& verdict, std::vector<Repair> const& step,
                    Edges const& mended) {
        auto parts = blamed(graph_, step);
        auto const help = step.empty() ? std::string("compare every conductor with the drawing, post by post")
                                       : say_all(graph_, now, step);
        auto const turned = !step.empty() && step.front().kind == RepairKind::turn_battery;
        auto const cause = parts.empty() ? std::string("the wiring") : subject(now, step);
        Finding finding;
        if (auto const found = worst_loop(now, verdict, mended)) {
            finding = explain_loop(now, *found, turned, cause, help);
            for (auto const& s : found->loop.steps)
                if (static_cast<std::size_t>(s.edge) < edges_.size()) // else a step of the repair has added it
                    parts.push_back(graph_.id(edge(s.edge)));
        } else {
            finding = explain_loads(now, verdict, step, cause, help, mended, parts);
        }
        finding.parts = std::move(parts);
        keep_first_of_each(finding.parts);
        add_consequences(finding, now, verdict);
        return finding;
    }

    // "`J1` (`A+` to `B+`)", "battery `B`", "the leads of `troll`", "nothing joins `A+` and `B-`"
    std::string subject(Edges const& now, std::vector<Repair> const& step) const {
        auto const& repair = step.front();
        switch (repair.kind) {
        case RepairKind::turn_battery:
            return fmt::format("battery `{}` is the wrong way around", blamed(graph_, {repair})[0]);
        case RepairKind::swap_leads:
            return fmt::format("the leads on `{}` are swapped", blamed(graph_, {repair})[0]);
        case RepairKind::add:
            return fmt::format("nothing joins `{}` and `{}`", graph_.name(repair.at), graph_.name(repair.onto));
        case RepairKind::move_end:
        case RepairKind::remove:
            break;
        }
        return fmt::format("{} is on the wrong post",
                           name_conductor(graph_, now[static_cast<std::size_t>(repair.edge)]));
    }

    struct FoundLoop {
        WiringLoop loop;
        bool shorts = false; // one battery alone, by copper
    };

    // Of two faults each is said of its own loop: those first that what is mended lies in, then batteries that copper
    // shorts, then the shortest.
    std::optional<FoundLoop> worst_loop(Edges const& now, WiringVerdict const& verdict, Edges const& mended) const {
        auto const is_mended = [&](LoopStep const& step) {
            auto const &before = now[static_cast<std::size_t>(step.edge)],
                       &after = mended[static_cast<std::size_t>(step.edge)];
            return before.removed != after.removed || before.from != after.from || before.to != after.to;
        };
        auto const rank = [&](FoundLoop const& found) {
            auto const& steps = found.loop.steps;
            return std::tuple(std::none_of(steps.begin(), steps.end(), is_mended), !found.shorts, steps.size());
        };
        std::optional<FoundLoop> worst;
        auto const consider = [&](std::vector<int> const& batteries, bool shorts) {
            for (auto const b : batteries)
                if (auto loop = shortest_loop(graph_, now, b)) {
                    FoundLoop found{*std::move(loop), shorts};
                    if (!worst || rank(found) < rank(*worst)) worst = std::move(found);
                }
        };
        consider(verdict.shorted, true);
        consider(verdict.clashes, false);
        return worst;
    }

    Finding explain_loop(Edges const& now, FoundLoop const& found, bool turned, std::string const& cause,
                         std::string const& help) const {
        auto const& loop = found.loop;
        auto const volts = std::abs(loop_emf(now, loop)) * si::volt;
        auto const amperes = loop_current(now, loop);
        constexpr auto shorted_battery = rule_named(wiring_rules, "wiring/shorted-battery");
        constexpr auto shorted_loop = rule_named(wiring_rules, "wiring/shorted-loop");
        constexpr auto reversed = rule_named(wiring_rules, "wiring/reversed-battery");
        auto const& rule = found.shorts ? shorted_battery : turned ? reversed : shorted_loop;
        auto const drives = amperes ? fmt::format(" and drives about {}", print(*amperes)) : std::string();
        auto finding = finding_of(rule,
                                  fmt::format("{}: the loop {} adds up to {} instead of 0 V{}", cause,
                                              describe(graph_, now, loop), print(volts), drives),
                                  help);
        return measured(finding, volts.value(), 0.0, "V");
    }

    Finding explain_loads(Edges const& now, WiringVerdict const& verdict, std::vector<Repair> const& step,
                          std::string const& cause, std::string const& help, Edges const& mended,
                          std::vector<std::string>& parts) const {
        auto const kind = step.empty() ? RepairKind::move_end : step.front().kind;
        LoadVerdict const* worst = nullptr;
        for (auto const& load : verdict.loads) {
            if (load.state == FeedState::fed) continue;
            if (!worst || badness(load.state) > badness(worst->state)) worst = &load;
        }
        if (!worst) return explain_unused(now, verdict, cause, help, parts);
        auto const& id = graph_.id(now[static_cast<std::size_t>(worst->edge)]);
        parts.push_back(id);
        if (worst->state == FeedState::open) {
            constexpr auto open = rule_named(wiring_rules, "wiring/open-circuit");
            return finding_of(open, fmt::format("{}: `{}` has no closed path to the bank", cause, id), help);
        }
        constexpr auto reversed_battery = rule_named(wiring_rules, "wiring/reversed-battery");
        constexpr auto reversed_load = rule_named(wiring_rules, "wiring/reversed-load");
        constexpr auto system_voltage = rule_named(wiring_rules, "wiring/system-voltage");
        auto const& rule = kind == RepairKind::turn_battery      ? reversed_battery
                           : worst->state == FeedState::reversed ? reversed_load
                                                                 : system_voltage;
        auto const sees = open_circuit_volts(now, worst->edge);
        auto const should = open_circuit_volts(mended, worst->edge);
        auto const wanted = step.empty() || std::abs(should - sees) < same_volts ? edge(worst->edge).volts : should;
        // No other landing of a conductor gives that voltage: it is the batteries that are too few, too many or others.
        bool const other_batteries = step.empty() && rule.id == system_voltage.id;
        auto const nameplate = motor_nameplate(seen_, part(now[static_cast<std::size_t>(worst->edge)]));
        // The full voltage would destroy a motor that is made for what it sees.
        bool const must_stay =
            rule.id == system_voltage.id && nameplate && std::abs(*nameplate - worst->volts) <= same_volts;
        auto const message =
            other_batteries
                ? fmt::format("joined for {}, the system is {}: `{}` sees {} with nothing switched on",
                              print(worst->volts * si::volt), print(wanted * si::volt), id, print(sees * si::volt))
                : fmt::format("{}: `{}` sees {} with nothing switched on instead of {}", cause, id,
                              print(sees * si::volt), print(wanted * si::volt));
        auto finding = finding_of(rule, message, other_batteries ? std::string(rule.fix) : help);
        // Nothing but its own nameplate says that the batteries should give another voltage.
        if (other_batteries && nameplate && !seen_.bank().system.voltage) {
            finding.message =
                fmt::format("`{}` is made for {}, the batteries it is joined to give {}: it sees {} with "
                            "nothing switched on",
                            id, print(*nameplate * si::volt), print(worst->volts * si::volt), print(sees * si::volt));
            finding.help = fmt::format("use a motor made for {}, or feed `{}` from a converter; or join the batteries "
                                       "for {}",
                                       print(worst->volts * si::volt), id, print(*nameplate * si::volt));
        }
        if (must_stay)
            finding.help = fmt::format("`{}` is made for what it sees: do not move it to {}; feed it from a converter "
                                       "across the whole bank, or correct its `voltage`",
                                       id, print(wanted * si::volt));
        return measured(finding, sees, wanted, "V");
    }

    static int badness(FeedState state) {
        switch (state) {
        case FeedState::reversed:
            return 3;
        case FeedState::open:
            return 2;
        case FeedState::wrong_voltage:
            return 1;
        case FeedState::fed:
            break;
        }
        return 0;
    }

    Finding explain_unused(Edges const& now, WiringVerdict const& verdict, std::string const& cause,
                           std::string const& help, std::vector<std::string>& parts) const {
        std::vector<std::string> idle;
        for (auto const b : verdict.unused)
            idle.push_back(graph_.id(now[static_cast<std::size_t>(b)]));
        parts.insert(parts.end(), idle.begin(), idle.end());
        constexpr auto unused = rule_named(wiring_rules, "wiring/unused-battery");
        return finding_of(unused, fmt::format("{}: {} can carry no current to any load", cause, quoted_list(idle)),
                          help);
    }

    void add_consequences(Finding& finding, Edges const& now, WiringVerdict const& verdict) const {
        for (auto const& load : verdict.loads) {
            auto const& id = graph_.id(now[static_cast<std::size_t>(load.edge)]);
            if (load.state == FeedState::fed) continue;
            if (load.state == FeedState::open)
                add_consequence(finding, "wiring/open-circuit", fmt::format("`{}` has no closed path to the bank", id));
            else
                add_consequence(finding,
                                load.state == FeedState::reversed ? "wiring/reversed-load" : "wiring/system-voltage",
                                fmt::format("`{}` sees {} with nothing switched on", id, print(load.volts * si::volt)));
        }
        for (auto const b : verdict.unused)
            add_consequence(
                finding, "wiring/unused-battery",
                fmt::format("`{}` can carry no current to any load", graph_.id(now[static_cast<std::size_t>(b)])));
    }

    // --- numbers ----------------------------------------------------------------------------------------------------
    double emf(WiringEdge const& battery) const {
        auto const& b = seen_.bank().batteries[part(battery).index];
        return open_circuit_voltage(b, seen_.bank().system.ambient).value(); // [V]
    }

    double loop_emf(Edges const& now, WiringLoop const& loop) const {
        double sum = 0.0;
        for (auto const& step : loop.steps) {
            auto const& e = now[static_cast<std::size_t>(step.edge)];
            if (e.kind == WiringEdgeKind::battery) sum += step.forward ? emf(e) : -emf(e);
        }
        return sum;
    }

    // What the bank as described drives through this loop with every load off; only where the loop is in the bank as
    // described.
    std::optional<Current> loop_current(Edges const& now, WiringLoop const& loop) const {
        double most = 0.0; // [A]
        auto const& point = seen_.at_rest();
        if (point.status != solver::Status::solved) return std::nullopt;
        for (auto const& step : loop.steps) {
            auto const i = static_cast<std::size_t>(step.edge);
            if (i >= edges_.size() || now[i].from != edges_[i].from || now[i].to != edges_[i].to) return std::nullopt;
            if (edges_[i].kind != WiringEdgeKind::battery) continue;
            if (auto const* reading = reading_if_any(point, graph_.id(edges_[i])))
                most = std::max(most, std::abs(reading->current.value()));
        }
        return most * si::ampere;
    }

    // By the batteries' open-circuit voltages, with every device closed and every load off.
    double open_circuit_volts(Edges edges, int load_edge) const {
        for (auto& e : edges)
            if (e.kind == WiringEdgeKind::battery) e.volts = emf(e);
        for (auto const& load : judge(graph_, edges).loads)
            if (load.edge == load_edge) return load.volts;
        return 0.0;
    }

    Seen const& seen_;
    WiringGraph const& graph_;
    Findings& findings_;
    Edges edges_;
    WiringShape shape_;
};

} // namespace internal

BANKWRIGHT_INLINE void check_wiring(Seen const& seen, Findings& findings) {
    internal::WiringInspector(seen, findings).inspect();
}

} // namespace bankwright
