#pragma once

#include "bankwright/analyses/take_off.hpp"
#include "bankwright/rules/sharing.hpp"
#include "bankwright/rules/wiring_words_inl.hpp"
#include "bankwright/units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

class SharingInspector {
public:
    SharingInspector(Seen const& seen, Findings& findings) : seen_(seen), findings_(findings) {}

    void inspect() {
        if (seen_.at_rest_is_sound()) circulating();
        if (!seen_.is_sound()) return;
        for (auto const& battery : seen_.bank().batteries) {
            auto const* reading = reading_if_any(seen_.working(), battery.id);
            if (reading) reverse_charge(battery, reading->current);
            if (reading) over_current(battery, reading->current);
        }
        uneven();
    }

private:
    // Current below this is no current: a millionth of what the bank carries, or a tenth of a milliampere.
    double nothing() const {
        double most = 0.0;
        for (auto const& part : seen_.working().parts)
            most = std::max(most, std::abs(part.current.value()));
        return std::max(1e-4, 1e-6 * most); // [A]
    }

    void reverse_charge(Battery const& battery, Current current) {
        bool const anything_drawn =
            std::any_of(seen_.working().parts.begin(), seen_.working().parts.end(), [&](auto const& p) {
                return (p.kind == PartKind::motor || p.kind == PartKind::load) && p.current.value() > nothing();
            });
        if (!anything_drawn || current.value() > -nothing() || seen_.is_charging()) return;
        constexpr auto rule = rule_named(sharing_rules, "sharing/reverse-charge");
        auto finding = finding_of(
            rule, fmt::format("`{}` is charged at {} while the bank discharges", battery.id, print(-current)),
            std::string(rule.fix));
        measured(finding, current.value(), 0.0, "A").parts = {battery.id};
        findings_.push_back(std::move(finding));
    }

    void over_current(Battery const& battery, Current current) {
        auto const charging = current.value() < 0.0;
        auto const& limit = charging ? battery.max_charge : battery.max_discharge;
        if (!limit || std::abs(current.value()) <= limit->value()) return;
        constexpr auto rule = rule_named(sharing_rules, "sharing/over-current");
        auto const found = std::abs(current.value()) * si::ampere;
        auto finding = finding_of(rule,
                                  fmt::format("`{}` {} {}, at most {}", battery.id,
                                              charging ? "is charged at" : "delivers", print(found), print(*limit)),
                                  std::string(rule.fix));
        measured(finding, found.value(), limit->value(), "A").parts = {battery.id};
        finding.key = charging ? "max_charge" : "max_discharge";
        findings_.push_back(std::move(finding));
    }

    void circulating() {
        constexpr auto rule = rule_named(sharing_rules, "sharing/circulating");
        constexpr double hours = 100.0;
        Battery const* worst = nullptr;
        double worst_amperes = 0.0; // [A]
        double worst_limit = 0.0;   // [A]
        std::vector<std::string> givers;
        for (auto const& battery : seen_.bank().batteries) {
            auto const* reading = reading_if_any(seen_.at_rest(), battery.id);
            if (!reading || !battery.capacity) continue;
            auto const limit = battery.capacity->value() / 3600.0 / hours;
            auto const amperes = -reading->current.value();
            if (-amperes > limit) givers.push_back(battery.id);
            if (amperes <= limit || (worst && amperes / limit <= worst_amperes / worst_limit)) continue;
            worst = &battery;
            worst_amperes = amperes;
            worst_limit = limit;
        }
        if (!worst) return;
        auto const from = givers.empty() ? std::string("the others") : quoted_list(givers);
        auto finding =
            finding_of(rule,
                       fmt::format("with every load off `{}` is charged by {} at {}, at most {} (C/100)", worst->id,
                                   from, print(worst_amperes * si::ampere), print(worst_limit * si::ampere)),
                       std::string(rule.fix));
        measured(finding, worst_amperes, worst_limit, "A").parts = {worst->id};
        finding.parts.insert(finding.parts.end(), givers.begin(), givers.end());
        findings_.push_back(std::move(finding));
    }

    void uneven() {
        auto const& form = seen_.arrangement();
        auto const& graph = seen_.graph();
        if (form.form != ArrangementForm::strings || form.parallel < 2) return;
        double total = 0.0;
        std::vector<std::pair<double, std::vector<std::string>>> strings; // [A], batteries
        for (auto const& string : form.strings) {
            std::vector<std::string> ids;
            for (auto const e : string)
                ids.push_back(graph.id(graph.edges[static_cast<std::size_t>(e)]));
            auto const* reading = reading_if_any(seen_.working(), ids.front());
            if (!reading) return;
            total += reading->current.value();
            strings.emplace_back(reading->current.value(), std::move(ids));
        }
        if (total <= nothing() || seen_.is_charging()) return;
        auto const busiest = std::max_element(strings.begin(), strings.end(),
                                              [](auto const& a, auto const& b) { return a.first < b.first; });
        constexpr double tolerated = 1.10; // common practice, no single source
        auto const even = total / static_cast<double>(strings.size());
        if (busiest->first <= tolerated * even) return;
        constexpr auto rule = rule_named(sharing_rules, "sharing/uneven");
        auto const best = best_take_off(seen_.bank(), graph, form);
        auto help = std::string(rule.fix);
        if (!best.positive.empty())
            help = fmt::format(
                "take the positive lead off `{}` and the negative off `{}`: the busiest string then carries "
                "{:.0f} % of its share; or lead every string to common busbars",
                best.positive, best.negative, 100.0 * best.worst_share);
        auto finding =
            finding_of(rule,
                       fmt::format("the string of {} carries {}, {:.0f} % of its even share of {}, at most {:.0f} %",
                                   quoted_list(busiest->second), print(busiest->first * si::ampere),
                                   100.0 * busiest->first / even, print(even * si::ampere), 100.0 * tolerated),
                       std::move(help));
        measured(finding, busiest->first, tolerated * even, "A").parts = busiest->second;
        for (auto& id : links_between_strings())
            finding.parts.push_back(std::move(id));
        findings_.push_back(std::move(finding));
    }

    // The conductors that join strings at their ends: their resistance is what makes the sharing uneven.
    std::vector<std::string> links_between_strings() const {
        std::vector<std::string> ids;
        auto const& graph = seen_.graph();
        for (auto const& edge : graph.edges) {
            if (edge.kind != WiringEdgeKind::conductor) continue;
            auto const battery = [&](int t) { return graph.owner_of(t).kind == PartKind::battery; };
            if (battery(edge.from) && battery(edge.to) && graph.name(edge.from).back() == graph.name(edge.to).back())
                ids.push_back(graph.id(edge));
        }
        return ids;
    }

    Seen const& seen_;
    Findings& findings_;
};

BANKWRIGHT_INLINE void check_sharing(Seen const& seen, Findings& findings) {
    SharingInspector(seen, findings).inspect();
}

} // namespace bankwright
