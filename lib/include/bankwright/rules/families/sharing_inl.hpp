#pragma once

#include "bankwright/analyses/main_leads.hpp"
#include "bankwright/rules/families/sharing.hpp"
#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal {

class SharingInspector {
public:
    SharingInspector(Seen const& seen, Findings& findings) : seen_(seen), findings_(findings) {}

    void inspect() {
        if (seen_.at_rest_is_sound()) circulating();
        if (!seen_.is_sound()) return;
        reverse_charge();
        over_current();
        uneven();
    }

private:
    static constexpr double nothing = 1e-4; // [A] below any clamp's last digit, above rounding at a thousand amperes

    // A battery and its current where that is beyond what it may be.
    struct Excess {
        Battery const* battery;
        double amperes; // [A]
        double limit;   // [A]
    };

    // What a battery of this capacity may take from another while they settle: common practice, no single source.
    static double settling(Battery const& battery) {
        return battery.capacity ? battery.capacity->value() / 3600.0 / 100.0 : 0.0;
    }

    void reverse_charge() {
        bool const anything_drawn =
            std::any_of(seen_.working().parts.begin(), seen_.working().parts.end(), [&](auto const& p) {
                return (p.kind == PartKind::motor || p.kind == PartKind::load) && p.current.value() > nothing;
            });
        if (!anything_drawn || seen_.is_charging()) return;
        std::vector<Excess> charged;
        std::vector<std::string> givers;
        for (auto const& battery : seen_.bank().batteries) {
            auto const* reading = reading_if_any(seen_.by_themselves(), battery.id);
            auto const most = std::max(settling(battery), nothing);
            if (!reading) continue;
            if (exceeds(-reading->current.value(), most))
                charged.push_back({&battery, -reading->current.value(), most});
            else if (reading->current.value() > most)
                givers.push_back(battery.id);
        }
        if (charged.empty()) return;
        constexpr auto rule = rule_named(sharing_rules, "sharing/reverse-charge");
        auto const worst = worst_first(charged);
        auto finding =
            finding_of(rule,
                       fmt::format("{} {} charged at {} while the bank discharges", quoted_list(ids(charged)),
                                   charged.size() == 1 ? "is" : "are", print(worst.amperes * si::ampere)),
                       std::string(rule.fix));
        measured(finding, -worst.amperes, 0.0, "A").parts = ids(charged);
        finding.parts.insert(finding.parts.end(), givers.begin(), givers.end());
        findings_.push_back(std::move(finding));
    }

    void over_current() {
        for (bool const charging : {false, true}) {
            std::vector<Excess> beyond;
            for (auto const& battery : seen_.bank().batteries) {
                auto const* reading = reading_if_any(seen_.working(), battery.id);
                auto const& limit = charging ? battery.max_charge : battery.max_discharge;
                if (!reading || !limit) continue;
                auto const amperes = charging ? -reading->current.value() : reading->current.value();
                if (exceeds(amperes, limit->value())) beyond.push_back({&battery, amperes, limit->value()});
            }
            if (beyond.empty()) continue;
            constexpr auto rule = rule_named(sharing_rules, "sharing/over-current");
            auto const worst = worst_first(beyond);
            auto const said = beyond.size() == 1 ? (charging ? "is charged at" : "delivers")
                                                 : (charging ? "are charged at up to" : "deliver up to");
            auto finding = finding_of(rule,
                                      fmt::format("{} {} {}, at most {}", quoted_list(ids(beyond)), said,
                                                  print(worst.amperes * si::ampere), print(worst.limit * si::ampere)),
                                      std::string(rule.fix));
            measured(finding, worst.amperes, worst.limit, "A").parts = ids(beyond);
            finding.key = charging ? "max_charge" : "max_discharge";
            findings_.push_back(std::move(finding));
        }
    }

    // By how much they are beyond their limits; in the author's order where that is the same.
    static Excess worst_first(std::vector<Excess>& excesses) {
        std::stable_sort(excesses.begin(), excesses.end(), [](auto const& a, auto const& b) {
            return exceeds(a.amperes * b.limit, b.amperes * a.limit);
        });
        return excesses.front();
    }
    static std::vector<std::string> ids(std::vector<Excess> const& excesses) {
        std::vector<std::string> names;
        for (auto const& excess : excesses)
            names.push_back(excess.battery->id);
        return names;
    }

    void circulating() {
        constexpr auto rule = rule_named(sharing_rules, "sharing/circulating");
        Battery const* worst = nullptr;
        double worst_amperes = 0.0; // [A]
        double worst_limit = 0.0;   // [A]
        std::vector<std::string> givers;
        for (auto const& battery : seen_.bank().batteries) {
            auto const* reading = reading_if_any(seen_.at_rest(), battery.id);
            if (!reading || !battery.capacity) continue;
            auto const limit = settling(battery);
            auto const amperes = -reading->current.value();
            if (exceeds(-amperes, limit)) givers.push_back(battery.id);
            if (!exceeds(amperes, limit) || (worst && amperes / limit <= worst_amperes / worst_limit)) continue;
            worst = &battery;
            worst_amperes = amperes;
            worst_limit = limit;
        }
        if (!worst) return;
        auto const from = givers.empty() ? std::string("the others") : quoted_list(givers);
        auto finding =
            finding_of(rule,
                       fmt::format("with every load off, `{}` is charged by {} at {}, at most {} (C/100)", worst->id,
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
            auto const* reading = reading_if_any(seen_.by_themselves(), ids.front());
            if (!reading) return;
            total += reading->current.value();
            strings.emplace_back(reading->current.value(), std::move(ids));
        }
        if (total <= nothing || seen_.is_charging()) return;
        auto const busiest = std::max_element(strings.begin(), strings.end(),
                                              [](auto const& a, auto const& b) { return a.first < b.first; });
        constexpr double tolerated = 1.10; // common practice, no single source
        auto const even = total / static_cast<double>(strings.size());
        if (!exceeds(busiest->first, tolerated * even)) return;
        constexpr auto rule = rule_named(sharing_rules, "sharing/uneven");
        auto const best = best_main_leads(seen_.bank(), graph, form);
        auto help = std::string(rule.fix);
        if (!best.positive.empty())
            help = fmt::format(
                "land the positive main lead on `{}` and the negative one on `{}`: the busiest string then carries "
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

} // namespace internal

BANKWRIGHT_INLINE void check_sharing(Seen const& seen, Findings& findings) {
    internal::SharingInspector(seen, findings).inspect();
}

} // namespace bankwright
