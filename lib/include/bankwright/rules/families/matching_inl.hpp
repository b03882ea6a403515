#pragma once

#include "bankwright/devices/battery_limits.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"
#include "bankwright/rules/families/matching.hpp"
#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/units/print.hpp"

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

class MatchingInspector {
public:
    MatchingInspector(Seen const& seen, Findings& findings) : seen_(seen), graph_(seen.graph()), findings_(findings) {
        auto const bank_of = seen.bank_of_batteries_or_one();
        std::size_t b = 0;
        for (auto const& edge : graph_.edges)
            if (edge.kind == WiringEdgeKind::battery)
                banks_[{seen.verdict().island_of(edge.from), bank_of[b++]}].push_back(&battery(edge));
    }

    void inspect() {
        for (auto const& battery : seen_.bank().batteries)
            weak_cell(battery), rests_too_low(battery);
        for (auto const& [bank, batteries] : banks_) {
            chemistry(batteries);
            age(batteries);
        }
        voltage();
        for (auto const& string : strings()) {
            capacity(string);
            charge_in_string(string);
        }
        charge_in_parallel();
        limits();
    }

private:
    using Batteries = std::vector<Battery const*>;

    // Of every bank that a switch or nothing joins to another, else of the one that there is.
    std::vector<Batteries> strings() const {
        std::vector<Batteries> all;
        auto const add = [&](Arrangement const& form) {
            for (auto const& string : form.strings) {
                all.emplace_back();
                for (auto const e : string)
                    all.back().push_back(&battery(graph_.edges[static_cast<std::size_t>(e)]));
            }
        };
        if (banks_.size() <= 1 || !seen_.verdict().right()) {
            add(seen_.arrangement());
        } else {
            for (auto const& [bank, batteries] : banks_)
                add(seen_.arrangement_of(bank.second));
        }
        return all;
    }

    Battery const& battery(WiringEdge const& edge) const {
        return seen_.bank().batteries[graph_.parts[static_cast<std::size_t>(edge.part)].index];
    }
    static std::vector<std::string> ids(Batteries const& batteries) {
        std::vector<std::string> names;
        for (auto const* b : batteries)
            names.push_back(b->id);
        return names;
    }

    // Those that differ from the most common value come first: they are the ones to replace. Of two values that are
    // equally common the one that stands first in the file does.
    template <class Value>
    static Batteries odd_ones_first(Batteries batteries, Value value) {
        struct Rank {
            long often = 0;
            long first = 0;
        };
        std::map<Battery const*, Rank> ranks;
        for (auto const* b : batteries) {
            auto const same = [&](auto const* other) { return value(*other) == value(*b); };
            auto const first = std::find_if(batteries.begin(), batteries.end(), same);
            ranks[b] = {std::count_if(batteries.begin(), batteries.end(), same), first - batteries.begin()};
        }
        std::stable_sort(batteries.begin(), batteries.end(), [&](auto const* a, auto const* b) {
            return std::tuple(ranks[a].often, ranks[a].first) < std::tuple(ranks[b].often, ranks[b].first);
        });
        return batteries;
    }

    void chemistry(Batteries const& batteries) {
        Batteries known;
        for (auto const* b : batteries)
            if (b->chemistry) known.push_back(b);
        auto const sorted = odd_ones_first(known, [](Battery const& b) { return *b.chemistry; });
        if (sorted.empty() || sorted.front()->chemistry == sorted.back()->chemistry) return;
        constexpr auto rule = rule_named(matching_rules, "matching/mixed-chemistry");
        auto finding = finding_of(rule,
                                  fmt::format("`{}` is {}, `{}` is {}, in one bank", sorted.front()->id,
                                              label_name(*sorted.front()->chemistry), sorted.back()->id,
                                              label_name(*sorted.back()->chemistry)),
                                  std::string(rule.fix));
        finding.parts = ids(sorted);
        finding.key = "chemistry";
        findings_.push_back(std::move(finding));
    }

    void age(Batteries const& batteries) {
        Battery const* oldest = nullptr;
        Battery const* newest = nullptr;
        for (auto const* b : batteries) {
            if (!b->made) continue;
            if (!oldest || months_between(*b->made, *oldest->made) > 0) oldest = b;
            if (!newest || months_between(*newest->made, *b->made) > 0) newest = b;
        }
        constexpr double most_months = 6.0; // common practice, no single source
        if (!oldest || !exceeds(months_between(*oldest->made, *newest->made), most_months)) return;
        auto const months = months_between(*oldest->made, *newest->made);
        constexpr auto rule = rule_named(matching_rules, "matching/mixed-age");
        auto finding = finding_of(rule,
                                  fmt::format("`{}` was made {:.0f} months before `{}`, at most {:.0f} in one bank",
                                              oldest->id, months, newest->id, most_months),
                                  std::string(rule.fix));
        measured(finding, months, most_months, "months").parts = {oldest->id, newest->id};
        finding.key = "made";
        findings_.push_back(std::move(finding));
    }

    void weak_cell(Battery const& b) {
        constexpr auto rule = rule_named(matching_rules, "matching/weak-cell");
        auto const report = [&](int count, std::string_view kind, std::string const& what, std::string_view key,
                                std::string_view help) {
            auto finding = finding_of(
                rule, fmt::format("`{}` has {} {} {}{}", b.id, count, kind, count == 1 ? "cell" : "cells", what),
                std::string(help));
            finding.parts = {b.id};
            finding.key = key;
            findings_.push_back(std::move(finding));
        };
        if (b.dead_cells.value_or(0) > 0) report(*b.dead_cells, "dead", {}, "dead_cells", "replace the battery");
        if (!has_weak_cell(b)) return;
        report(*b.weak_cells, "weak",
               fmt::format(" of {} of the capacity: empty when the others still hold {}, and {}",
                           print(*b.weak_capacity), print(weak_cell_empties_at(b)),
                           has_protective_disconnect(b) ? "the disconnect opens then" : "driven backwards from there"),
               "weak_cells", rule.fix);
    }

    // A cell that gives nothing takes its whole voltage from the battery; half of it is told from an empty battery.
    void rests_too_low(Battery const& b) {
        if (!b.emf || b.dead_cells.value_or(0) > 0 || (!b.chemistry && !b.voltage)) return;
        auto sound = b;
        sound.emf.reset();
        auto const least = b.chemistry
                               ? open_circuit_voltage(sound, StateOfCharge::of(0.0), seen_.bank().system.ambient) -
                                     0.5 * nominal_cell_voltage(*b.chemistry)
                               : 0.5 * *b.voltage;
        if (!exceeds(least, *b.emf)) return;
        constexpr auto rule = rule_named(matching_rules, "matching/weak-cell");
        auto finding = finding_of(
            rule,
            fmt::format("`{}` rests at {}, at least {} even when empty: a cell of it is dead{}", b.id, print(*b.emf),
                        print(least), has_protective_disconnect(b) ? ", or its disconnect is open" : ""),
            has_protective_disconnect(b)
                ? "try to wake its disconnect with a charger made for that; else replace the battery"
                : "charge it by itself and measure it again at rest; replace it if it stays low");
        measured(finding, b.emf->value(), least.value(), "V").parts = {b.id};
        finding.key = "emf";
        findings_.push_back(std::move(finding));
    }

    void voltage() {
        constexpr auto rule = rule_named(matching_rules, "matching/mixed-voltage");
        auto const& verdict = seen_.standing_verdict();
        // In parallel: both posts joined to the same two points.
        std::map<std::pair<int, int>, Batteries> between;
        for (auto const& edge : graph_.edges) {
            if (edge.kind != WiringEdgeKind::battery) continue;
            between[{verdict.group_of(edge.from), verdict.group_of(edge.to)}].push_back(&battery(edge));
        }
        for (auto const& [ends, batteries] : between)
            if (ends.first != ends.second) differ(rule, batteries, Level::error, "in parallel");
        for (auto const& string : strings())
            differ(rule, string, Level::warning, "in series");
    }

    void differ(RuleInfo const& rule, Batteries const& batteries, Level level, std::string_view how) {
        auto const volts = [](Battery const& b) { return counted_voltage(b).value(); };
        auto const sorted = odd_ones_first(batteries, volts);
        auto const odd = nominal_voltage(*sorted.front());
        auto const usual = nominal_voltage(*sorted.back());
        if (std::abs(volts(*sorted.front()) - volts(*sorted.back())) < same_volts) return;
        auto finding = finding_of(rule,
                                  fmt::format("`{}` is a {} battery {} with `{}` of {}", sorted.front()->id, print(odd),
                                              how, sorted.back()->id, print(usual)),
                                  std::string(rule.fix));
        finding.level = level;
        measured(finding, odd.value(), usual.value(), "V").parts = ids(sorted);
        finding.key = "voltage";
        findings_.push_back(std::move(finding));
    }

    void capacity(Batteries const& string) {
        Battery const* least = nullptr;
        Battery const* most = nullptr;
        auto const usable = [](Battery const& b) {
            return b.capacity->value() / 3600.0 * b.health.value_or(Health::of(1)).value();
        };
        for (auto const* b : string) {
            if (!b->capacity) continue;
            if (!least || usable(*b) < usable(*least)) least = b;
            if (!most || usable(*b) > usable(*most)) most = b;
        }
        constexpr double tolerated = 0.05; // common practice
        if (!least || !exceeds((1.0 - tolerated) * usable(*most), usable(*least))) return;
        auto const lost = usable(*most) - usable(*least);
        constexpr auto rule = rule_named(matching_rules, "matching/mixed-capacity");
        auto finding = finding_of(rule,
                                  fmt::format("`{}` ends the run at {:.4g} Ah while `{}` in the same string holds "
                                              "{:.4g} Ah: {:.3g} Ah of it cannot be used",
                                              least->id, usable(*least), most->id, usable(*most), lost),
                                  std::string(rule.fix));
        measured(finding, usable(*least), (1.0 - tolerated) * usable(*most), "Ah").parts = {least->id, most->id};
        finding.key = "capacity";
        findings_.push_back(std::move(finding));
    }

    void charge_in_string(Batteries const& string) {
        auto const charge = [](Battery const* b) { return b->charge.value_or(StateOfCharge::of(1.0)).in_percent(); };
        auto const [low, high] = std::minmax_element(
            string.begin(), string.end(), [&](auto const* a, auto const* b) { return charge(a) < charge(b); });
        constexpr double tolerated = 10.0; // percent points, common practice
        if (low == string.end() || !exceeds(charge(*high) - charge(*low), tolerated)) return;
        constexpr auto rule = rule_named(matching_rules, "matching/mixed-charge");
        auto finding =
            finding_of(rule,
                       fmt::format("`{}` is at {:.3g} % while `{}` in the same string is at {:.3g} %, at most {:.0f} "
                                   "percentage points apart",
                                   (*low)->id, charge(*low), (*high)->id, charge(*high), tolerated),
                       std::string(rule.fix));
        measured(finding, charge(*high) - charge(*low), tolerated, "%").parts = {(*low)->id, (*high)->id};
        finding.key = "charge";
        findings_.push_back(std::move(finding));
    }

    // What the batteries drive through each other with every load off. Behind a wrong wiring it means nothing.
    void charge_in_parallel() {
        if (!seen_.verdict().right() || seen_.at_rest().status != solver::Status::solved) return;
        struct Excess {
            Battery const* battery;
            double amperes; // [A], signed
            double limit;   // [A]
        };
        std::vector<Excess> excesses;
        for (auto const& b : seen_.bank().batteries) {
            auto const* reading = reading_if_any(seen_.at_rest(), b.id);
            if (!reading) continue;
            auto const amperes = reading->current.value();
            auto const& own = amperes < 0 ? b.max_charge : b.max_discharge;
            if (!own && !b.capacity) continue;
            auto const rate =
                b.chemistry && is_lithium(*b.chemistry) ? 0.5 : 0.3; // of capacity an hour, common practice
            auto const limit = own ? own->value() : rate * b.capacity->value() / 3600.0;
            if (exceeds(std::abs(amperes), limit)) excesses.push_back({&b, amperes, limit});
        }
        if (excesses.empty()) return;
        std::stable_sort(excesses.begin(), excesses.end(), [](auto const& a, auto const& b) {
            return std::abs(a.amperes) / a.limit > std::abs(b.amperes) / b.limit;
        });
        auto const& worst = excesses.front();
        auto const found = std::abs(worst.amperes);
        constexpr auto rule = rule_named(matching_rules, "matching/mixed-charge");
        auto finding = finding_of(rule,
                                  fmt::format("with every load off, `{}` is {} by the others at {}, at most {}",
                                              worst.battery->id, worst.amperes < 0 ? "charged" : "drained",
                                              print(found * si::ampere), print(worst.limit * si::ampere)),
                                  std::string(rule.fix));
        measured(finding, found, worst.limit, "A").key = "charge";
        for (auto const& excess : excesses)
            finding.parts.push_back(excess.battery->id);
        findings_.push_back(std::move(finding));
    }

    void limits() {
        auto const& found = seen_.arrangement();
        std::size_t longest = static_cast<std::size_t>(std::max(found.series, 0));
        for (auto const& string : found.strings)
            longest = std::max(longest, string.size());
        constexpr auto series_rule = rule_named(matching_rules, "matching/series-limit");
        constexpr auto parallel_rule = rule_named(matching_rules, "matching/parallel-limit");
        limit(series_rule, &Battery::max_series, static_cast<int>(longest), "in series", "max_series");
        limit(parallel_rule, &Battery::max_parallel, found.parallel, "strings in parallel", "max_parallel");
    }

    // Of all that do not allow it, the one that allows least is named first.
    void limit(RuleInfo const& rule, std::optional<int> Battery::*most, int found, std::string_view what,
               std::string_view key) {
        Batteries against;
        for (auto const& b : seen_.bank().batteries)
            if (b.*most && found > *(b.*most)) against.push_back(&b);
        if (against.empty()) return;
        std::stable_sort(against.begin(), against.end(),
                         [&](auto const* a, auto const* b) { return *(a->*most) < *(b->*most); });
        auto const least = *(against.front()->*most);
        auto finding = finding_of(rule, fmt::format("{} {}, `{}` allows {}", found, what, against.front()->id, least),
                                  std::string(rule.fix));
        measured(finding, found, least, "").parts = ids(against);
        finding.key = std::string(key);
        findings_.push_back(std::move(finding));
    }

    Seen const& seen_;
    WiringGraph const& graph_;
    Findings& findings_;
    std::map<std::pair<int, int>, Batteries> banks_; // by island and bank
};

} // namespace internal

BANKWRIGHT_INLINE void check_matching(Seen const& seen, Findings& findings) {
    internal::MatchingInspector(seen, findings).inspect();
}

} // namespace bankwright
