#pragma once

#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/rules/families/wiring.hpp"
#include "bankwright/rules/families/wiring_ends.hpp"
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

// One wrong wiring is one cause and many consequences. The causes are the steps of the repair plan; what rule a cause
// belongs to is decided by the worst thing that it does.
class WiringInspector {
public:
    WiringInspector(Seen const& seen, Findings& findings)
        : seen_(seen), graph_(seen.graph()), findings_(findings), edges_(with_parallel_voltages_alike()) {}

    void inspect() {
        if (!seen_.whole()) return say_shorts();
        auto const verdict = judge(graph_, edges_);
        if (!verdict.right()) {
            auto const plan = plan_repair(graph_, edges_);
            bool const mends_well = !plan.steps.empty() && plan.steps.front().front().wrongs == 0 &&
                                    plan.steps.front().front().irregular == 0;
            if (mends_well || !say_unequal_strings(verdict)) follow(plan);
        }
        say_taps(judge(graph_, edges_));
        if (verdict.right()) {
            say_unequal_strings(verdict);
            say_partial_ties(verdict);
            constexpr auto split_bank = rule_named(wiring_rules, "wiring/missing-link");
            constexpr auto open_circuit = rule_named(wiring_rules, "wiring/open-circuit");
            say_split_banks(split_bank, graph_, edges_, verdict, findings_);
            say_idle_chargers(open_circuit, graph_, edges_, verdict, findings_);
        }
        say_loose_ends(verdict.right());
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
                "open this loop; which end in it is on the wrong post can be told when all parts are stated");
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
            return fmt::format("battery `{}` is the wrong way round", blamed(graph_, {repair})[0]);
        case RepairKind::swap_leads:
            return fmt::format("the leads on `{}` are exchanged", blamed(graph_, {repair})[0]);
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
        constexpr auto short_loop = rule_named(wiring_rules, "wiring/shorted-loop");
        constexpr auto reversed = rule_named(wiring_rules, "wiring/reversed-battery");
        auto const& rule = found.shorts ? shorted_battery : turned ? reversed : short_loop;
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
        auto const nameplate = motor_nameplate(*worst);
        // The full voltage would destroy a motor that is made for what it sees.
        bool const must_stay =
            rule.id == system_voltage.id && nameplate && std::abs(*nameplate - worst->volts) <= same_volts;
        auto finding = finding_of(rule,
                                  fmt::format("{}: `{}` sees {} with nothing switched on instead of {}", cause, id,
                                              print(sees * si::volt), print(wanted * si::volt)),
                                  other_batteries ? std::string(rule.fix) : help);
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

    static void add_consequence(Finding& finding, std::string_view rule, std::string const& message) {
        if (finding.rule != rule) finding.consequences.push_back(fmt::format("{} [{}]", message, rule));
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

    // What the bank as described drives through this loop with every load off; only where the loop is in the bank as described.
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

    // --- what is no miswire -----------------------------------------------------------------------------------------
    // Strings of other numbers but of one voltage drive nothing through each other; they only differ in kind.
    bool say_unequal_strings(WiringVerdict const& verdict) {
        bool const voltages_differ = !verdict.clashes.empty();
        if (!verdict.shorted.empty() || (!voltages_differ && !verdict.right())) return false;
        auto const form = bankwright::arrangement(graph_, edges_, verdict);
        if (form.form != ArrangementForm::unequal && (!voltages_differ || form.form != ArrangementForm::strings))
            return false;
        std::string text;
        std::vector<std::pair<double, std::vector<std::string>>> strings;
        for (auto const& string : form.strings) {
            std::vector<std::string> ids;
            double volts = 0.0;
            auto here = form.negative_group;
            for (auto const b : string) {
                if (verdict.group_of(edge(b).from) != here) return false; // turned round: another cause
                here = verdict.group_of(edge(b).to);
                ids.push_back(graph_.id(edge(b)));
                volts += edge(b).volts;
            }
            text += fmt::format("{}{} of {}", text.empty() ? "" : ", ", print(volts * si::volt), quoted_list(ids));
            strings.emplace_back(volts, std::move(ids));
        }
        constexpr auto rule = rule_named(wiring_rules, "wiring/unequal-strings");
        auto finding =
            finding_of(rule, fmt::format("parallel strings differ: {}", text),
                       "give every string the same number of the same batteries, or take the odd string off");
        std::stable_sort(strings.begin(), strings.end(),
                         [](auto const& a, auto const& b) { return a.first < b.first; });
        measured(finding, strings.front().first, strings.back().first, "V");
        for (auto const& [volts, ids] : strings)
            finding.parts.insert(finding.parts.end(), ids.begin(), ids.end());
        if (voltages_differ) {
            add_consequence(finding, "wiring/shorted-loop", "the higher string drives current through the lower one");
        } else {
            finding.level = Level::warning;
            finding.found = finding.allowed = std::nullopt; // the voltages are right
            finding.unit.clear();
        }
        findings_.push_back(std::move(finding));
        return true;
    }

    void say_taps(WiringVerdict const& verdict) {
        constexpr auto rule = rule_named(wiring_rules, "wiring/mid-string-tap");
        if (!verdict.shorted.empty() || !verdict.clashes.empty()) return;
        for (auto const& load : verdict.loads) {
            auto const& e = edge(load.edge);
            if (load.state == FeedState::open || load.state == FeedState::reversed || is_motor_made_for_another(load))
                continue;
            auto const top = verdict.top[static_cast<std::size_t>(verdict.island_of(e.from))];
            if (load.volts > top - same_volts) continue;
            bool const another_takes_all =
                std::any_of(verdict.loads.begin(), verdict.loads.end(), [&](auto const& other) {
                    return verdict.island_of(edge(other.edge).from) == verdict.island_of(e.from) &&
                           other.volts > top - same_volts;
                });
            if (!another_takes_all) continue;
            auto finding = finding_of(rule,
                                      fmt::format("`{}` draws from {} of a string of {}", graph_.id(e),
                                                  print(load.volts * si::volt), print(top * si::volt)),
                                      std::string(rule.fix));
            measured(finding, load.volts, top, "V").parts = {graph_.id(e)};
            findings_.push_back(std::move(finding));
        }
    }

    // It was not meant to tap the string: wiring/system-voltage has said so.
    bool is_motor_made_for_another(LoadVerdict const& load) const {
        auto const nameplate = motor_nameplate(load);
        return load.state == FeedState::wrong_voltage && nameplate && std::abs(*nameplate - load.volts) > same_volts;
    }

    std::optional<double> motor_nameplate(LoadVerdict const& load) const { // [V]
        auto const& it = part(edge(load.edge));
        if (it.kind != PartKind::motor || !seen_.bank().motors[it.index].voltage) return std::nullopt;
        return seen_.bank().motors[it.index].voltage->value();
    }

    // Between the two ends of a bank each level of potential should be one point (tied) or one point a string (not).
    void say_partial_ties(WiringVerdict const& verdict) {
        auto const form = bankwright::arrangement(graph_, edges_, verdict);
        if (form.form != ArrangementForm::cross_tied) return;
        auto const island = verdict.island[static_cast<std::size_t>(form.positive_group)];
        std::map<long, std::vector<int>> levels; // groups that batteries touch, by potential
        for (auto const& e : edges_) {
            if (e.kind != WiringEdgeKind::battery || verdict.island_of(e.from) != island) continue;
            for (auto const t : {e.from, e.to}) {
                auto& groups = levels[std::lround(verdict.potential_of(t) / same_volts)];
                auto const g = verdict.group_of(t);
                if (std::find(groups.begin(), groups.end(), g) == groups.end()) groups.push_back(g);
            }
        }
        auto const is_tied = [](auto const& level) { return level.second.size() == 1; };
        if (std::all_of(levels.begin(), levels.end(), is_tied)) return;
        std::vector<std::string> ties;
        std::vector<std::string> apart;
        for (auto const& e : edges_) {
            auto const volts = verdict.potential_of(e.from);
            if (verdict.island_of(e.from) != island || volts < same_volts) continue;
            if (volts > verdict.top[static_cast<std::size_t>(island)] - same_volts) continue;
            auto const polarity = [&](int t) { return graph_.name(t).back(); };
            auto const& groups = levels[std::lround(volts / same_volts)];
            if (e.kind == WiringEdgeKind::conductor && groups.size() < static_cast<std::size_t>(form.parallel) &&
                (polarity(e.from) == polarity(e.to) || is_redundant(e)))
                ties.push_back(graph_.id(e));
            if (e.kind == WiringEdgeKind::battery && groups.size() > 1) apart.push_back(graph_.id(e));
        }
        constexpr auto rule = rule_named(wiring_rules, "wiring/uneven-cross-links");
        auto finding = finding_of(rule,
                                  fmt::format("{} {} strings part of the way up, while {} stay apart",
                                              ties.empty() ? std::string("something") : quoted_list(ties),
                                              ties.size() == 1 ? "joins" : "join", quoted_list(apart)),
                                  std::string(rule.fix));
        finding.parts = std::move(ties);
        finding.parts.insert(finding.parts.end(), apart.begin(), apart.end());
        findings_.push_back(std::move(finding));
    }

    // Taking it off leaves a bank that is right: it is not what holds the strings together.
    bool is_redundant(WiringEdge const& conductor) const {
        auto trial = edges_;
        trial[static_cast<std::size_t>(&conductor - edges_.data())].removed = true;
        return judge(graph_, trial).right();
    }

    // A terminal where exactly one thing ends. Behind a wrong wiring it is a consequence, and said with the first
    // cause.
    void say_loose_ends(bool right) {
        std::vector<int> joined(graph_.terminals.size(), 0);
        std::vector<int> conductor(graph_.terminals.size(), -1);
        for (std::size_t t = 0; t < joined.size(); ++t)
            joined[t] = graph_.owner_of(static_cast<int>(t)).kind != PartKind::busbar;
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            if (edges_[e].kind != WiringEdgeKind::conductor) continue;
            for (auto const t : {edges_[e].from, edges_[e].to}) {
                ++joined[static_cast<std::size_t>(t)];
                conductor[static_cast<std::size_t>(t)] = static_cast<int>(e);
            }
        }
        constexpr auto rule = rule_named(wiring_rules, "wiring/loose-end");
        for (std::size_t t = 0; t < joined.size(); ++t) {
            if (joined[t] != 1) continue;
            auto const& owner = graph_.owner_of(static_cast<int>(t));
            std::vector<std::string> bare{graph_.terminals[t]};
            // The bare terminals of one device stand together, and make one finding.
            while (conductor[t] < 0 && t + 1 < joined.size() && joined[t + 1] == 1 && conductor[t + 1] < 0 &&
                   graph_.owner[t + 1] == graph_.owner[t])
                bare.push_back(graph_.terminals[++t]);
            auto const message = conductor[t] >= 0 ? fmt::format("`{}` ends on `{}`, where nothing else is joined",
                                                                 graph_.id(edge(conductor[t])), graph_.terminals[t])
                                                   : fmt::format("nothing is landed on {}", quoted_list(bare));
            if (!right) {
                for (auto& finding : findings_)
                    if (finding.rule.rfind("wiring/", 0) == 0) {
                        add_consequence(finding, rule.id, message);
                        break;
                    }
                continue;
            }
            auto finding = finding_of(rule, message, std::string(rule.fix));
            finding.parts = {conductor[t] >= 0 ? graph_.id(edge(conductor[t])) : owner.id};
            if (conductor[t] >= 0) finding.parts.push_back(owner.id);
            findings_.push_back(std::move(finding));
        }
    }

    Seen const& seen_;
    WiringGraph const& graph_;
    Findings& findings_;
    Edges edges_;
};

BANKWRIGHT_INLINE void check_wiring(Seen const& seen, Findings& findings) { WiringInspector(seen, findings).inspect(); }

} // namespace bankwright
