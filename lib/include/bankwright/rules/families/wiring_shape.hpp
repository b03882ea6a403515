// Of a wiring that shorts nothing: are its strings alike, is a load tapped part of the way up, are its cross-links
// even, does an end hang loose?
#pragma once

#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/rules/rule.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/wiring/arrangement.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal {

inline void add_consequence(Finding& finding, std::string_view rule, std::string const& message) {
    if (finding.rule != rule) finding.consequences.push_back(fmt::format("{} [{}]", message, rule));
}

inline std::optional<double> motor_nameplate(Seen const& seen, WiringPart const& part) { // [V]
    if (part.kind != PartKind::motor || !seen.bank().motors[part.index].voltage) return std::nullopt;
    return seen.bank().motors[part.index].voltage->value();
}

class WiringShape {
public:
    using Edges = std::vector<WiringEdge>;

    WiringShape(Seen const& seen, Edges const& edges, Findings& findings)
        : seen_(seen), graph_(seen.graph()), edges_(edges), findings_(findings) {}

    // Strings of other numbers but of one voltage drive nothing through each other; they only differ in kind.
    bool say_unequal_strings(RuleInfo const& rule, WiringVerdict const& verdict) {
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
                if (verdict.group_of(edge(b).from) != here) return false; // turned around: another cause
                here = verdict.group_of(edge(b).to);
                ids.push_back(graph_.id(edge(b)));
                volts += edge(b).volts;
            }
            text += fmt::format("{}{} of {}", text.empty() ? "" : ", ", print(volts * si::volt), quoted_list(ids));
            strings.emplace_back(volts, std::move(ids));
        }
        auto finding = finding_of(rule, fmt::format("parallel strings differ: {}", text),
                                  "give every string the same number of the same batteries, or remove the odd string");
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

    void say_taps(RuleInfo const& rule, WiringVerdict const& verdict) {
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
            auto const below = verdict.potential_of(e.to); // [V] of its negative above that of the boat
            auto const where = below < same_volts ? std::string("the lower part: its negative is the boat's negative")
                                                  : fmt::format("not the lowest part: its negative is {} above the "
                                                                "boat's negative, and must not touch it",
                                                                print(below * si::volt));
            auto finding = finding_of(rule,
                                      fmt::format("`{}` draws from {} of a string of {}, {}", graph_.id(e),
                                                  print(load.volts * si::volt), print(top * si::volt), where),
                                      std::string(rule.fix));
            if (below >= same_volts)
                finding.help += "; until then keep its case and its negative off everything grounded: an accessory "
                                "that joins them shorts the batteries below";
            measured(finding, load.volts, top, "V").parts = {graph_.id(e)};
            findings_.push_back(std::move(finding));
        }
    }

    // Between the two ends of a bank each level of potential should be one point (tied) or one point a string (not).
    void say_uneven_cross_links(RuleInfo const& rule, WiringVerdict const& verdict) {
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
        auto finding = finding_of(rule,
                                  fmt::format("{} {} strings part of the way up, while {} stay apart",
                                              ties.empty() ? std::string("something") : quoted_list(ties),
                                              ties.size() == 1 ? "joins" : "join", quoted_list(apart)),
                                  std::string(rule.fix));
        finding.parts = std::move(ties);
        finding.parts.insert(finding.parts.end(), apart.begin(), apart.end());
        findings_.push_back(std::move(finding));
    }

    // A terminal where exactly one thing ends. Behind a wrong wiring it is a consequence, and said with the first
    // cause.
    void say_loose_ends(RuleInfo const& rule, bool right) {
        std::vector<int> joined(graph_.terminals.size(), 0);
        std::vector<int> conductor(graph_.terminals.size(), -1);
        for (std::size_t t = 0; t < joined.size(); ++t)
            joined[t] = graph_.owner_of(static_cast<int>(t)).kind != PartKind::busbar;
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            auto const kind = graph_.parts[static_cast<std::size_t>(edges_[e].part)].kind;
            bool const seats = edges_[e].kind == WiringEdgeKind::contact &&
                               (kind == PartKind::battery || kind == PartKind::busbar); // a device on its post
            if (seats) {
                joined[static_cast<std::size_t>(edges_[e].from)] += 2;
                joined[static_cast<std::size_t>(edges_[e].to)] += 1;
            }
            if (edges_[e].kind != WiringEdgeKind::conductor) continue;
            for (auto const t : {edges_[e].from, edges_[e].to}) {
                ++joined[static_cast<std::size_t>(t)];
                conductor[static_cast<std::size_t>(t)] = static_cast<int>(e);
            }
        }
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

private:
    WiringEdge const& edge(int e) const { return edges_[static_cast<std::size_t>(e)]; }

    // It was not meant to tap the string: wiring/system-voltage has said so.
    bool is_motor_made_for_another(LoadVerdict const& load) const {
        auto const nameplate = motor_nameplate(seen_, graph_.parts[static_cast<std::size_t>(edge(load.edge).part)]);
        return load.state == FeedState::wrong_voltage && nameplate && std::abs(*nameplate - load.volts) > same_volts;
    }

    // The bank is right without it: it is not what holds the strings together.
    bool is_redundant(WiringEdge const& conductor) const {
        auto trial = edges_;
        trial[static_cast<std::size_t>(&conductor - edges_.data())].removed = true;
        return judge(graph_, trial).right();
    }

    Seen const& seen_;
    WiringGraph const& graph_;
    Edges const& edges_;
    Findings& findings_;
};

} // namespace bankwright::internal
