#pragma once

#include "bankwright/devices/battery_limits.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/charger_limits.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/network/to_branches.hpp"
#include "bankwright/rules/families/charging.hpp"
#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/wiring/charger_span.hpp"
#include "bankwright/wiring/wiring_regions.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal {

class ChargingInspector {
public:
    ChargingInspector(Seen const& seen, Findings& findings)
        : seen_(seen), bank_(seen.bank()), graph_(seen.graph()), findings_(findings) {}

    void inspect() {
        if (bank_.chargers.empty() && bank_.converters.empty()) return;
        for (auto const& charger : bank_.chargers)
            if (charger.connected.value_or(false)) unstated(charger);
        if (seen_.common_negative_shorts()) {
            not_isolated();
            return; // what lies across its outputs is a short
        }
        auto const& verdict = seen_.verdict();
        if (!verdict.shorted.empty() || !verdict.clashes.empty()) return;
        for (std::size_t output = 0; output < graph_.edges.size(); ++output) {
            auto const& edge = graph_.edges[output];
            if (edge.kind != WiringEdgeKind::charger) continue;
            auto const charger = charger_of(edge);
            if (verdict.island_of(edge.from) != verdict.island_of(edge.to)) continue; // wiring/open-circuit has said it
            auto const volts = verdict.potential_of(edge.from) - verdict.potential_of(edge.to);
            if (volts < -same_volts) {
                polarity(charger, edge);
                auto turned = edge;
                std::swap(turned.from, turned.to);
                for (auto const e : batteries_across(graph_.edges, verdict, turned))
                    charged_.insert(e); // as soon as it is turned around
                continue;
            }
            auto const across = batteries_across(graph_.edges, verdict, edge);
            for (auto const e : across)
                charged_.insert(e);
            voltage(charger, edge, across);
            rate(charger, edge, across);
            cold(charger, across);
            lost_in_leads(charger, static_cast<int>(output), across);
        }
        partial();
    }

private:
    // A converter that has batteries across its output charges them.
    Charger charger_of(WiringEdge const& edge) const {
        auto const& part = graph_.parts[static_cast<std::size_t>(edge.part)];
        if (part.kind == PartKind::charger) return bank_.chargers[part.index];
        auto const& converter = bank_.converters[part.index];
        Charger charger;
        charger.id = converter.id;
        charger.voltage = converter.voltage;
        if (converter.power && converter.voltage) charger.current = *converter.power / *converter.voltage;
        charger.kind = ChargerKind::converter;
        return charger;
    }

    // Out and back between the output and the nearest posts, at full current: contacts are taken as ideal.
    void lost_in_leads(Charger const& charger, int edge, std::vector<int> const& across) {
        constexpr double tolerated = 0.03; // common practice, no source
        if (!charger.voltage || !charger.current || across.empty()) return;
        Resistance leads{};
        std::vector<std::string> conductors;
        for (auto const e : supply_path(graph_, edge)) {
            auto const& wire = graph_.edges[static_cast<std::size_t>(e)];
            if (wire.kind != WiringEdgeKind::conductor) continue;
            auto const& run = run_of(bank_, graph_, wire);
            leads += resistance(run.conductor, bank_.system.ambient, bank_.system.joint);
            conductors.push_back(run.conductor.id);
        }
        auto const lost = Voltage(leads * *charger.current);
        auto const most = tolerated * *charger.voltage;
        if (!exceeds(lost, most)) return;
        constexpr auto rule = rule_named(charging_rules, "charging/voltage-drop");
        auto finding = finding_of(rule,
                                  fmt::format("the leads of `{}` drop {} of its {} at {} ({:.1f} %), at most {:.0f} %",
                                              charger.id, print(lost), print(*charger.voltage), print(*charger.current),
                                              100.0 * (lost / *charger.voltage).value(), 100.0 * tolerated),
                                  std::string(rule.fix));
        measured(finding, lost.value(), most.value(), "V");
        add(std::move(finding), charger.id, conductors);
    }

    Battery const& battery(int e) const {
        return bank_
            .batteries[graph_.parts[static_cast<std::size_t>(graph_.edges[static_cast<std::size_t>(e)].part)].index];
    }
    std::vector<std::string> ids(std::vector<int> const& batteries) const {
        std::vector<std::string> names;
        for (auto const e : batteries)
            names.push_back(battery(e).id);
        return names;
    }
    // What it gives is not known, and so it counts as giving nothing (network/to_branches_inl.hpp).
    void unstated(Charger const& charger) {
        constexpr auto of_voltage = rule_named(charging_rules, "charging/voltage");
        constexpr auto of_current = rule_named(charging_rules, "charging/rate");
        auto const say = [&](RuleInfo const& rule, std::string_view key) {
            auto finding =
                finding_of(rule,
                           fmt::format("`{}` is plugged in and its `{}` is not stated: voltages and currents "
                                       "are worked out as if it supplied nothing",
                                       charger.id, key),
                           fmt::format("state its `{}`, or `connected = false`", key));
            finding.level = Level::note;
            finding.key = "connected";
            add(std::move(finding), charger.id, {});
        };
        if (!charger.voltage) say(of_voltage, "voltage");
        if (!charger.current) say(of_current, "current");
    }
    void add(Finding finding, std::string const& charger, std::vector<std::string> const& others) {
        finding.parts.push_back(charger);
        finding.parts.insert(finding.parts.end(), others.begin(), others.end());
        findings_.push_back(std::move(finding));
    }

    void not_isolated() {
        constexpr auto rule = rule_named(charging_rules, "charging/not-isolated");
        auto edges = graph_.edges;
        for (auto& e : edges)
            e.removed = e.kind == WiringEdgeKind::contact &&
                        graph_.parts[static_cast<std::size_t>(e.part)].kind == PartKind::charger;
        auto const apart = judge(graph_, edges);
        std::map<int, std::pair<double, WiringEdge const*>> worst; // by charger: [V], the join inside it
        for (auto const& e : graph_.edges) {
            if (e.kind != WiringEdgeKind::contact) continue;
            auto const& part = graph_.parts[static_cast<std::size_t>(e.part)];
            if (part.kind != PartKind::charger || apart.island_of(e.from) != apart.island_of(e.to)) continue;
            auto const volts = std::abs(apart.potential_of(e.to) - apart.potential_of(e.from));
            auto& most = worst[e.part];
            if (volts > std::max(same_volts, most.first)) most = {volts, &e};
        }
        for (auto const& [part, most] : worst) {
            auto const& [volts, e] = most;
            if (!e) continue;
            auto finding =
                finding_of(rule,
                           fmt::format("`{}` joins `{}` and `{}` inside; they are {} apart in this bank", graph_.id(*e),
                                       graph_.name(e->from), graph_.name(e->to), print(volts * si::volt)),
                           std::string(rule.fix));
            measured(finding, volts, 0.0, "V").key = "isolated";
            add(std::move(finding), graph_.id(*e), {});
        }
    }

    void polarity(Charger const& charger, WiringEdge const& edge) {
        constexpr auto rule = rule_named(charging_rules, "charging/polarity");
        auto const volts = seen_.verdict().potential_of(edge.from) - seen_.verdict().potential_of(edge.to);
        auto finding = finding_of(
            rule,
            fmt::format("`{}` is {} below `{}`", graph_.name(edge.from), print(-volts * si::volt),
                        graph_.name(edge.to)),
            fmt::format("swap the conductors on `{}` and `{}`", graph_.name(edge.from), graph_.name(edge.to)));
        measured(finding, volts, -volts, "V");
        add(std::move(finding), charger.id, {});
    }

    // One way up is enough: parallel strings have the same number of cells, or the wiring rules have spoken.
    void voltage(Charger const& charger, WiringEdge const& edge, std::vector<int> const& across) {
        if (!charger.voltage || across.empty()) return;
        auto low = 0.0;  // [V]
        auto high = 0.0; // [V]
        bool moved = false;
        std::vector<std::string> on_the_way;
        auto here = seen_.verdict().group_of(edge.to);
        for (std::size_t guard = 0; guard < across.size() && here != seen_.verdict().group_of(edge.from); ++guard) {
            auto const next = std::find_if(across.begin(), across.end(), [&](int e) {
                return seen_.verdict().group_of(graph_.edges[static_cast<std::size_t>(e)].from) == here;
            });
            if (next == across.end() || !battery(*next).chemistry) return;
            auto const& one = battery(*next);
            auto const range = charge_range(*one.chemistry, cell_count(one));
            auto const shift = temperature_compensation(*one.chemistry, cell_count(one),
                                                        one.temperature.value_or(bank_.system.ambient));
            moved = moved || shift != Voltage{};
            low += (range.low + shift).value();
            high += (range.high + shift).value();
            on_the_way.push_back(battery(*next).id);
            here = seen_.verdict().group_of(graph_.edges[static_cast<std::size_t>(*next)].to);
        }
        constexpr double setting = 0.01; // a charger keeps its setting within 1 %, common practice
        auto const holds = held_voltage(charger, temperature_of_batteries(bank_));
        auto const volts = holds.value();
        if (volts >= low * (1.0 - setting) && volts <= high * (1.0 + setting)) return;
        constexpr auto rule = rule_named(charging_rules, "charging/voltage");
        auto finding =
            finding_of(rule,
                       fmt::format("`{}` holds {} across {}, which {} {} to {}{}", charger.id, print(holds),
                                   quoted_list(on_the_way), on_the_way.size() == 1 ? "needs" : "need",
                                   print(low * si::volt), print(high * si::volt), moved ? at_temperature() : ""),
                       std::string(rule.fix));
        measured(finding, volts, volts < low ? low : high, "V").key = "voltage";
        add(std::move(finding), charger.id, on_the_way);
    }

    std::string at_temperature() const { return " at " + print(temperature_of_batteries(bank_)); }

    void rate(Charger const& charger, WiringEdge const& edge, std::vector<int> const& across) {
        if (!charger.current || across.empty()) return;
        auto const bottom = seen_.verdict().group_of(edge.to);
        auto const strings = std::count_if(across.begin(), across.end(), [&](int e) {
            return seen_.verdict().group_of(graph_.edges[static_cast<std::size_t>(e)].from) == bottom;
        });
        if (strings == 0) return;
        auto const each = *charger.current / static_cast<double>(strings);
        for (auto const e : across) {
            auto const limit = charge_limit(battery(e));
            // An alternator holds its voltage, and a start battery, nearly always full, takes what it accepts.
            bool const is_start = battery(e).role == Role::start && charger.kind == ChargerKind::alternator;
            if (is_start && !battery(e).max_charge) continue;
            if (!limit || !exceeds(each, *limit)) continue;
            constexpr auto rule = rule_named(charging_rules, "charging/rate");
            auto finding = finding_of(rule,
                                      fmt::format("`{}` charges `{}` at up to {}, at most {}", charger.id,
                                                  battery(e).id, print(each), print(*limit)),
                                      std::string(rule.fix));
            measured(finding, each.value(), limit->value(), "A").key = "current";
            add(std::move(finding), charger.id, {battery(e).id});
            return; // one finding for the output
        }
    }

    void cold(Charger const& charger, std::vector<int> const& across) {
        Battery const* coldest = nullptr;
        std::vector<std::string> too_cold;
        auto const temperature = [&](Battery const& b) { return b.temperature.value_or(bank_.system.ambient); };
        for (auto const e : across) {
            auto const& b = battery(e);
            if (!b.chemistry || !is_lithium(*b.chemistry)) continue;
            auto const least = temperature_limits(*b.chemistry).charge_low;
            if (!exceeds(least.value(), temperature(b).value())) continue;
            too_cold.push_back(b.id);
            if (!coldest || temperature(b).value() < temperature(*coldest).value()) coldest = &b;
        }
        if (!coldest) return;
        auto const least = temperature_limits(*coldest->chemistry).charge_low;
        constexpr auto rule = rule_named(charging_rules, "charging/cold");
        auto finding =
            finding_of(rule,
                       fmt::format("{} {} charged at {}, at least {}", quoted_list(too_cold),
                                   too_cold.size() == 1 ? "is" : "are", print(temperature(*coldest)), print(least)),
                       std::string(rule.fix));
        measured(finding, in_celsius(temperature(*coldest)), in_celsius(least), "degC").parts = std::move(too_cold);
        finding.parts.push_back(charger.id);
        findings_.push_back(std::move(finding));
    }

    void partial() {
        constexpr auto rule = rule_named(charging_rules, "charging/partial");
        for (auto const& string : seen_.arrangement().strings) {
            std::vector<int> left_out;
            for (auto const e : string)
                if (!charged_.count(e)) left_out.push_back(e);
            if (left_out.empty() || left_out.size() == string.size()) continue;
            auto finding = finding_of(rule,
                                      fmt::format("{} {} not charged while the rest of the string is",
                                                  quoted_list(ids(left_out)), left_out.size() == 1 ? "is" : "are"),
                                      std::string(rule.fix));
            finding.parts = ids(left_out);
            findings_.push_back(std::move(finding));
        }
    }

    Seen const& seen_;
    Bank const& bank_;
    WiringGraph const& graph_;
    Findings& findings_;
    std::set<int> charged_; // battery edges
};

} // namespace internal

BANKWRIGHT_INLINE void check_charging(Seen const& seen, Findings& findings) {
    internal::ChargingInspector(seen, findings).inspect();
}

} // namespace bankwright
