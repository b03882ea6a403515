#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/rules/families/conductor.hpp"
#include "bankwright/rules/families/connection.hpp"
#include "bankwright/rules/families/nameplate_words.hpp"
#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal {

class ConnectionInspector {
public:
    ConnectionInspector(Seen const& seen, Findings& findings)
        : seen_(seen), bank_(seen.bank()), graph_(seen.graph()), findings_(findings) {}

    void inspect() {
        if (seen_.full_is_sound()) {
            for (auto const& c : bank_.connectors) {
                rating(c.id, c.rating);
                if (c.contact) hot({c.id}, "each contact of", *c.contact, "contact");
            }
            for (auto const& s : bank_.switches) {
                rating(s.id, s.rating);
                if (s.resistance) hot({s.id}, "the contact of", *s.resistance, "resistance");
            }
            for (auto const& s : bank_.shunts)
                rating(s.id, s.rating);
            for (auto const& r : bank_.relays)
                rating(r.id, r.rating);
            for (auto const& s : bank_.selectors)
                rating(s.id, s.rating);
            for (auto const& b : bank_.busbars)
                rating(b.id, b.rating);
            std::vector<std::string> usual; // conductors with the joints that the system states for all
            for (auto const* runs : {&bank_.jumpers, &bank_.cables})
                for (auto const& [conductor, from, to] : *runs) {
                    if (conductor.resistance) continue;
                    if (conductor.joint)
                        hot({conductor.id}, "each joint of", *conductor.joint, "joint");
                    else
                        usual.push_back(conductor.id);
                }
            hot(std::move(usual), "each joint of", bank_.system.joint, "");
        }
        for (auto const& c : bank_.connectors)
            too_thick(c);
        crowded_studs();
    }

private:
    void rating(std::string const& id, std::optional<Current> const& limit) {
        auto const borne = borne_by(seen_, id);
        if (!borne || !limit) return;
        auto const found = borne->most;
        if (!exceeds(found, *limit)) return;
        constexpr auto rule = rule_named(connection_rules, "connection/rating");
        auto finding =
            finding_of(rule,
                       fmt::format("`{}` carries {} {}, rated {}", id, print(found),
                                   borne->rests_on_nameplate() ? "by the nameplates downstream" : "at full throttle",
                                   print(*limit)),
                       std::string(rule.fix));
        measured(finding, found.value(), limit->value(), "A").parts = {id};
        soften_above_nameplate(finding, *borne, *limit);
        finding.key = "rating";
        findings_.push_back(std::move(finding));
    }

    // Conductors that do not go into its terminals.
    void too_thick(Connector const& connector) {
        auto const most = connector.max_size.value_or(Awg{6}); // common practice, no source
        std::vector<std::string> conductors;
        std::optional<WireSize> thickest;
        bool alike = true;
        for (auto const& edge : graph_.edges) {
            if (edge.kind != WiringEdgeKind::conductor) continue;
            auto const lands = [&](int terminal) { return graph_.owner_of(terminal).id == connector.id; };
            auto const& conductor = run_of(bank_, graph_, edge).conductor;
            if (!(lands(edge.from) || lands(edge.to)) || !conductor.size) continue;
            if (!exceeds(conductor.size->area(), most.area())) continue;
            conductors.push_back(conductor.id);
            alike = alike && (!thickest || thickest == conductor.size);
            if (!thickest || conductor.size->area() > thickest->area()) thickest = conductor.size;
        }
        if (conductors.empty()) return;
        constexpr auto rule = rule_named(connection_rules, "connection/too-thick");
        auto finding = finding_of(
            rule,
            fmt::format("{} {} {}, the terminals of `{}` take at most {}{}", quoted_list(conductors),
                        conductors.size() == 1 ? "is"
                        : alike                ? "are"
                                               : "are up to",
                        print(*thickest), connector.id, connector.max_size ? "" : "about ", print(most)),
            fmt::format("end {} in a short tail of {}, joined in a stud or crimped splice close to `{}` and no thinner "
                        "than the current and the device allow, or use a larger connector{}",
                        quoted_list(conductors), print(most), connector.id,
                        connector.max_size ? "" : "; state its `max_size` where its maker gives it"));
        measured(finding, thickest->area().value() * 1e6, most.area().value() * 1e6, "mm2").parts = {connector.id};
        finding.parts.insert(finding.parts.end(), conductors.begin(), conductors.end());
        if (connector.max_size) finding.key = "max_size";
        findings_.push_back(std::move(finding));
    }

    // Of parts whose contacts all have that resistance.
    void hot(std::vector<std::string> parts, std::string_view what, Resistance resistance, std::string_view key) {
        constexpr double most = 5.0; // [W] common practice
        double hottest = 0.0;        // [W]
        std::vector<std::string> too_hot;
        for (auto& id : parts) {
            auto const* reading = reading_if_any(seen_.full(), id);
            if (!reading) continue;
            auto const watts = reading->current.value() * reading->current.value() * resistance.value();
            if (!exceeds(watts, most)) continue;
            hottest = std::max(hottest, watts);
            too_hot.push_back(std::move(id));
        }
        if (too_hot.empty()) return;
        constexpr auto rule = rule_named(connection_rules, "connection/hot-connection");
        auto finding = finding_of(rule,
                                  fmt::format("{} {} turns {} into heat at full throttle, at most {}", what,
                                              quoted_list(too_hot), print(hottest * si::watt), print(most * si::watt)),
                                  std::string(rule.fix));
        measured(finding, hottest, most, "W").parts = std::move(too_hot);
        finding.key = std::string(key);
        findings_.push_back(std::move(finding));
    }

    void crowded_studs() {
        std::vector<std::vector<std::string>> landed(graph_.terminals.size());
        for (auto const& edge : graph_.edges) {
            if (edge.kind != WiringEdgeKind::conductor) continue;
            for (auto const t : {edge.from, edge.to})
                landed[static_cast<std::size_t>(t)].push_back(graph_.id(edge));
        }
        for (auto const& [line, post] : seats(bank_))
            if (auto const at = graph_.terminal_named.find(post); at != graph_.terminal_named.end())
                landed[static_cast<std::size_t>(at->second)].push_back(line.substr(0, line.find('.')));
        constexpr auto rule = rule_named(connection_rules, "connection/crowded-stud");
        for (std::size_t t = 0; t < landed.size(); ++t) {
            auto const& owner = graph_.owner_of(static_cast<int>(t));
            auto studs = 1;
            if (owner.kind == PartKind::busbar) {
                auto const& busbar = bank_.busbars[owner.index];
                if (!busbar.studs) continue; // how many it has is not stated
                studs = *busbar.studs;
            }
            auto const most = 4 * studs;
            if (static_cast<int>(landed[t].size()) <= most) continue;
            auto finding = finding_of(
                rule, fmt::format("{} conductors end on `{}`, at most {}", landed[t].size(), graph_.terminals[t], most),
                std::string(rule.fix));
            measured(finding, static_cast<double>(landed[t].size()), most, "").parts = {owner.id};
            finding.parts.insert(finding.parts.end(), landed[t].begin(), landed[t].end());
            findings_.push_back(std::move(finding));
        }
    }

    Seen const& seen_;
    Bank const& bank_;
    WiringGraph const& graph_;
    Findings& findings_;
};

} // namespace internal

BANKWRIGHT_INLINE void check_connections(Seen const& seen, Findings& findings) {
    internal::ConnectionInspector(seen, findings).inspect();
}

} // namespace bankwright
