// The rules about each breaker and fuse that is there: where it sits, what it is rated for, what it can interrupt.
#pragma once

#include "bankwright/analyses/prospective_current.hpp"
#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/charger_limits.hpp"
#include "bankwright/devices/conductor_ampacity.hpp"
#include "bankwright/devices/conductor_heating.hpp"
#include "bankwright/devices/protection_rating.hpp"
#include "bankwright/devices/protection_trip.hpp"
#include "bankwright/rules/families/conductor.hpp"
#include "bankwright/rules/families/nameplate_words.hpp"
#include "bankwright/rules/families/protection_infos.hpp"
#include "bankwright/rules/families/wiring_words.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/wiring/battery_rings.hpp"
#include "bankwright/wiring/wiring_regions.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal {

class DeviceInspector {
public:
    DeviceInspector(Seen const& seen, Findings& findings)
        : seen_(seen), bank_(seen.bank()), graph_(seen.graph()), findings_(findings),
          ties_batteries_(on_rings_of_batteries(graph_, false)) {
        for (std::size_t e = 0; e < graph_.edges.size(); ++e)
            if (is_device(graph_, graph_.edges[e]) && feed_path(graph_, static_cast<int>(e)))
                fed_by_a_battery_.insert(graph_.id(graph_.edges[e]));
    }

    void inspect() {
        for (std::size_t e = 0; e < graph_.edges.size(); ++e) {
            auto const& part = graph_.parts[static_cast<std::size_t>(graph_.edges[e].part)];
            if (part.kind != PartKind::breaker && part.kind != PartKind::fuse) continue;
            auto const& device = (part.kind == PartKind::breaker ? bank_.breakers : bank_.fuses)[part.index];
            too_far(device, static_cast<int>(e));
            if (!seen_.verdict().right()) continue; // its numbers would be those of another bank
            auto const region = protected_region(graph_, static_cast<int>(e));
            rating_high(device, region);
            rating_low(device);
            voltage(device, graph_.edges[e]);
            shorted(device, static_cast<int>(e), region);
        }
        parallel_strings();
        say_unknown_bands();
    }

private:
    Finding& report(RuleInfo const& rule, ProtectiveDevice const& device, std::string_view key, std::string message) {
        auto finding = finding_of(rule, std::move(message), std::string(rule.fix));
        finding.parts = {device.id};
        finding.key = std::string(key);
        findings_.push_back(std::move(finding));
        return findings_.back();
    }

    // Along the conductors from where they leave the bank: the last post, or the busbar to which its batteries are led.
    // What ties the bank's own batteries to each other does not count.
    void too_far(ProtectiveDevice const& device, int edge) {
        auto const path = feed_path(graph_, edge);
        if (!path || path->edges.empty()) return;
        auto start = path->post;
        auto here = path->post;
        double meters = 0.0;
        bool enclosed = true;
        std::vector<std::string> conductors;
        for (auto const e : path->edges) {
            auto const& wire = graph_.edges[static_cast<std::size_t>(e)];
            here = wire.from == here ? wire.to : wire.from;
            if (wire.kind != WiringEdgeKind::conductor) continue;
            if (ties_batteries_[static_cast<std::size_t>(e)]) {
                start = here;
                continue;
            }
            auto const& conductor = run_of(bank_, graph_, wire).conductor;
            if (!conductor.length) return; // its length is not known
            meters += conductor.length->value();
            enclosed = enclosed && conductor.enclosed.value_or(false);
            conductors.push_back(conductor.id);
        }
        bool const from_post = conductors.size() == 1 && graph_.owner_of(start).kind == PartKind::battery;
        auto const routing_if_enclosed = from_post ? Routing::enclosed_from_battery : Routing::enclosed;
        auto const routing = enclosed ? routing_if_enclosed : Routing::open;
        auto const limit = distance_limit(routing).distance;
        if (!exceeds(meters, limit.value())) return;
        constexpr auto rule = rule_named(protection_rules, "protection/too-far");
        auto& finding = report(rule, device, "",
                               fmt::format("`{}` is {} along {} from `{}`, at most {}{}", device.id, inches(meters),
                                           quoted_list(conductors), graph_.name(start), inches(limit.value()),
                                           enclosed ? " where it is enclosed" : ""));
        measured(finding, meters, limit.value(), "m");
        finding.parts.insert(finding.parts.end(), conductors.begin(), conductors.end());
        bool const enclosing_cures =
            !enclosed && !exceeds(meters, distance_limit(routing_if_enclosed).distance.value());
        if (!enclosing_cures) finding.help = "move the device closer to the battery post";
    }

    static std::string inches(double meters) { return fmt::format("{:.3g} in ({:.3g} m)", meters / 0.0254, meters); }

    // A short tap from this device's region to the next device: that one protects it, close enough to where it begins.
    bool is_tap(WiringEdge const& wire, ProtectiveDevice const& device) const {
        auto const next_device = [&](int terminal) {
            auto const& owner = graph_.owner_of(terminal);
            bool const another =
                (owner.kind == PartKind::breaker || owner.kind == PartKind::fuse) && owner.id != device.id;
            return another && !fed_by_a_battery_.count(owner.id); // a device of another string is not behind this one
        };
        auto const& conductor = run_of(bank_, graph_, wire).conductor;
        auto const routing = conductor.enclosed.value_or(false) ? Routing::enclosed : Routing::open;
        return next_device(wire.from) != next_device(wire.to) && conductor.length &&
               !exceeds(*conductor.length, distance_limit(routing).distance);
    }

    // The conductor of least ampacity in a region.
    struct Weakest {
        Conductor const* conductor = nullptr;
        Ampacity limit;
    };
    std::optional<Weakest> weakest(ProtectiveDevice const& device, ProtectedRegion const& region) const {
        std::optional<Weakest> found;
        for (auto const e : region.conductors) {
            if (is_tap(graph_.edges[static_cast<std::size_t>(e)], device)) continue;
            auto const& conductor = run_of(bank_, graph_, graph_.edges[static_cast<std::size_t>(e)]).conductor;
            auto const limit = ampacity(conductor, bank_.system.ambient);
            if (limit && (!found || limit->current < found->limit.current)) found = Weakest{&conductor, *limit};
        }
        return found;
    }

    void rating_high(ProtectiveDevice const& device, ProtectedRegion const& region) {
        auto const weak = weakest(device, region);
        if (!weak || !device.rating) return;
        auto const limit = abyc_rating_limit(weak->limit.current);
        if (!exceeds(*device.rating, limit.rating)) return;
        auto const law = cfr_rating_limit(weak->limit.current, bank_.system.voltage.value_or(0.0 * si::volt));
        bool const within_law = !exceeds(*device.rating, law.rating);
        constexpr auto rule = rule_named(protection_rules, "protection/rating-high");
        auto& finding = report(rule, device, "rating",
                               fmt::format("`{}` is rated {}, at most {} for `{}`, which may carry {}{}", device.id,
                                           print(*device.rating), print(limit.rating), weak->conductor->id,
                                           print(weak->limit.current),
                                           weak->limit.insulation_assumed ? " (60 degC insulation assumed)" : ""));
        measured(finding, device.rating->value(), limit.rating.value(), "A");
        finding.help = cure_of_high_rating(device, *weak->conductor, limit.rating);
        finding.parts.push_back(weak->conductor->id);
        if (!within_law) return;
        finding.level = Level::warning;
        finding.message += fmt::format("; within the 150 % ({}) that the law allows below 50 V", print(law.rating));
    }

    // Never a rating below what flows: a lead that carries but a part of it wants a device of its own.
    std::string cure_of_high_rating(ProtectiveDevice const& device, Conductor const& weak, Current limit) const {
        auto const thicker = fmt::format("use a thicker conductor for `{}`", weak.id);
        if (!seen_.full_is_sound())
            return fmt::format("use a device of at most {}, or a thicker conductor", print(limit));
        auto const all = borne_by(seen_, device.id);
        auto const own = borne_by(seen_, weak.id);
        if (!all || !own) return fmt::format("use a device of at most {}, or a thicker conductor", print(limit));
        auto const next = next_standard_size(all->most);
        if (next && !exceeds(*next, limit))
            return fmt::format("use a device of {} for the {} that it carries, at most {}, or {}", print(*next),
                               print(all->most), print(limit), thicker);
        auto const fuse =
            next_standard_size(std::max(Current(own->most / continuous_share), Current(1.0 * si::ampere)));
        constexpr double part_of_it = 0.95;
        if (own->most < part_of_it * all->most && fuse && !exceeds(*fuse, limit))
            return fmt::format(
                "give `{}` its own fuse, {} for the {} that it carries (at most {}), where it leaves the "
                "circuit of `{}`; `{}` itself has to carry {}",
                weak.id, print(*fuse), print(own->most), print(limit), device.id, device.id, print(all->most));
        return fmt::format("{}; a smaller device would not carry its {}", thicker, print(all->most));
    }

    void rating_low(ProtectiveDevice const& device) {
        if (!seen_.full_is_sound() || !device.rating) return;
        auto const borne = borne_by(seen_, device.id);
        if (!borne) return;
        if (!exceeds(borne->most, *device.rating)) return for_hours(device);
        std::string when;
        if (auto const band = trip_band(device, borne->most); band && std::isfinite(band->at_most.value()))
            when = fmt::format(": it opens within {}", print(band->at_most));
        constexpr auto rule = rule_named(protection_rules, "protection/rating-low");
        auto& finding =
            report(rule, device, "rating",
                   fmt::format("`{}` carries {} {}, rated {}{}", device.id, print(borne->most),
                               borne->rests_on_nameplate() ? "by the nameplates downstream" : "at full throttle",
                               print(*device.rating), when));
        measured(finding, borne->most.value(), device.rating->value(), "A");
        if (auto const next = next_standard_size(borne->most))
            finding.help =
                fmt::format("use {}, the next standard size, with conductors that it may protect", print(*next));
        soften_above_nameplate(finding, *borne, *device.rating);
    }

    // Of a load that runs for hours, as the file has it run.
    void for_hours(ProtectiveDevice const& device) {
        if (!bears_80_percent_for_hours(device) || !seen_.runs_for_hours()) return;
        auto const lasting = lasting_current(seen_, device.id);
        auto const limit = continuous_share * *device.rating;
        if (!lasting || !exceeds(*lasting, limit)) return;
        constexpr auto rule = rule_named(protection_rules, "protection/rating-low");
        auto const least = next_standard_size(*lasting / continuous_share);
        auto& finding =
            report(rule, device, "rating",
                   fmt::format("`{}` carries {} for {}, rated {}: a breaker of class {} may carry at most 80 % "
                               "of its rating for hours ({})",
                               device.id, print(*lasting), print(*bank_.system.runtime), print(*device.rating),
                               *device.trip_class, print(limit)));
        measured(finding, lasting->value(), limit.value(), "A");
        if (least)
            finding.help =
                fmt::format("use {}, the next standard size, with conductors that it may protect", print(*least));
    }

    // The law asks for the nominal voltage; on charge the upper charging voltage of every battery of its island counts.
    void voltage(ProtectiveDevice const& device, WiringEdge const& edge) {
        if (!device.voltage) return;
        auto const highest = top_with(edge, [this](Battery const& battery) {
            return battery.chemistry ? charge_range(*battery.chemistry, cell_count(battery)).high
                                     : open_circuit_voltage(battery, bank_.system.ambient);
        });
        auto const nominal = top_with(edge, [](Battery const& battery) { return nominal_voltage(battery); });
        if (!exceeds(std::max(highest, nominal), *device.voltage)) return;
        bool const by_law = exceeds(nominal, *device.voltage);
        auto const most = by_law ? nominal : highest;
        constexpr auto rule = rule_named(protection_rules, "protection/voltage");
        auto& finding =
            report(rule, device, "voltage",
                   by_law ? fmt::format("`{}` is rated {}, the circuit is {} nominal", device.id,
                                        print(*device.voltage), print(nominal))
                          : fmt::format("`{}` is rated {}, enough for {} nominal; on charge the bank reaches {}",
                                        device.id, print(*device.voltage), print(nominal), print(highest)));
        if (!by_law) finding.level = Level::warning;
        measured(finding, device.voltage->value(), most.value(), "V");
    }

    // Of the device's island, each battery at a voltage.
    template <class VoltsOf>
    Voltage top_with(WiringEdge const& edge, VoltsOf&& volts_of) const {
        auto edges = graph_.edges;
        for (auto& e : edges)
            if (e.kind == WiringEdgeKind::battery)
                e.volts = volts_of(bank_.batteries[graph_.parts[static_cast<std::size_t>(e.part)].index]).value();
        auto const verdict = judge(graph_, edges);
        return verdict.top[static_cast<std::size_t>(verdict.island_of(edge.from))] * si::volt;
    }

    void shorted(ProtectiveDevice const& device, int edge, ProtectedRegion const& region) {
        if (hangs_on_a_battery(edge)) interrupting(device);
        auto const prospective = hangs_on_a_battery(edge) ? largest_short(device) : std::optional(Current{});
        if (!prospective) return;
        short_circuit_heat(device, *prospective, region);
    }

    bool hangs_on_a_battery(int e) const {
        auto const& verdict = seen_.verdict();
        auto const island = verdict.island[static_cast<std::size_t>(verdict.group_of(edge(e).from))];
        return verdict.top[static_cast<std::size_t>(island)] > 0.0;
    }

    // Through the device, of shorts on either side of it; none where neither has an answer.
    std::optional<Current> largest_short(ProtectiveDevice const& device) {
        if (!shorts_) shorts_.emplace(bank_);
        std::optional<Current> largest;
        for (auto const* side : {".line", ".load"}) {
            auto const at = shorts_->at(device.id + side, device.id);
            if (at && (!largest || at->through_part > *largest)) largest = at->through_part;
        }
        return largest;
    }

    // What `short-circuit` says of the device: rules and commands go by one current.
    void interrupting(ProtectiveDevice const& device) {
        if (!device.interrupts) return;
        if (!duties_) duties_ = short_circuit(bank_).devices;
        auto const duty =
            std::find_if(duties_->begin(), duties_->end(), [&](auto const& one) { return one.id == device.id; });
        if (duty == duties_->end() || duty->suffices.value_or(true)) return;
        constexpr auto rule = rule_named(protection_rules, "protection/interrupting");
        bool const by_computation = exceeds(duty->most, *device.interrupts);
        auto need = print(duty->need) + " can flow into a short";
        if (duty->needed_by == NeededBy::table)
            need = fmt::format("ABYC E-11's table asks for {} at this cranking current ({} by computation)",
                               print(duty->need), print(duty->most));
        if (duty->needed_by == NeededBy::large_bank)
            need = fmt::format("ABYC E-11 asks for {} on a bank above 2200 cranking amperes or 500 Ah ({} by "
                               "computation)",
                               print(duty->need), print(duty->most));
        auto& finding = report(rule, device, "interrupts",
                               fmt::format("`{}` interrupts {}, {}", device.id, print(*device.interrupts), need));
        measured(finding, duty->need.value(), device.interrupts->value(), "A");
        bool const table_holds = duty->table && duty->needed_by != NeededBy::large_bank; // no further than 2200 A
        if (table_holds && *device.interrupts >= *duty->table && !resistances_are_stated()) {
            finding.level = Level::warning; // the standard is met, and the computation rests on a derived resistance
            finding.message += fmt::format("; ABYC E-11's table by cranking current ({}) is met", print(*duty->table));
            return;
        }
        if (duty->needed_by != NeededBy::large_bank || by_computation) return;
        finding.level = Level::warning;
        finding.help = "use a device that interrupts that much, or ask the battery's maker for its short-circuit "
                       "current, and state its `resistance`: voltage over that current";
    }

    bool resistances_are_stated() const {
        return std::all_of(bank_.batteries.begin(), bank_.batteries.end(),
                           [](Battery const& battery) { return battery.resistance.has_value(); });
    }

    void short_circuit_heat(ProtectiveDevice const& device, Current prospective, ProtectedRegion const& region) {
        Conductor const* thinnest = nullptr;
        std::optional<LetThrough> least;
        for (auto const e : region.conductors) {
            if (is_tap(graph_.edges[static_cast<std::size_t>(e)], device)) continue;
            auto const& conductor = run_of(bank_, graph_, graph_.edges[static_cast<std::size_t>(e)]).conductor;
            auto const bears = withstand(conductor);
            if (!bears || (least && *bears >= *least)) continue;
            thinnest = &conductor;
            least = bears;
        }
        if (!thinnest) return;
        auto const bound = let_through(device, prospective);
        if (!has_trip_band(device)) unknown_bands_.push_back(device.id);
        if (!bound || !exceeds(bound->at_most, *least)) return;
        // At the prospective current, the heat of either as the time in which it is reached.
        Duration const opens = bound->at_most / (prospective * prospective);
        Duration const bears = *least / (prospective * prospective);
        constexpr auto rule = rule_named(protection_rules, "protection/short-circuit-heat");
        auto& finding = report(
            rule, device, "class",
            fmt::format("`{}` may let a short circuit of {} flow for {}; the insulation of `{}` is spoiled after {}",
                        device.id, print(prospective), print(opens), thinnest->id, print(bears)));
        measured(finding, opens.value(), bears.value(), "s").parts.push_back(thinnest->id);
    }

    void say_unknown_bands() {
        if (unknown_bands_.empty()) return;
        constexpr auto rule = rule_named(protection_rules, "protection/short-circuit-heat");
        auto finding = finding_of(
            rule,
            fmt::format(
                "whether {} {} in time for the conductors is not known: neither a known `class` nor `trips` is stated",
                quoted_list(unknown_bands_), unknown_bands_.size() == 1 ? "opens" : "open"),
            fmt::format("state the standard that its time-current band comes from, as `class`, if you know "
                        "it: {}; or the maker's own band, as in trips = [[\"200 %\", \"10 s\", \"60 s\"]]",
                        fmt::join(trip_class_names, ", ")));
        finding.level = Level::note;
        finding.parts = unknown_bands_;
        findings_.push_back(std::move(finding));
    }

    // Two strings share a short if both their ends are joined with no device between, nor one inside either string.
    void parallel_strings() {
        auto const& form = seen_.arrangement();
        bool const tied = form.form == ArrangementForm::cross_tied;
        if ((form.form != ArrangementForm::strings && !tied) || form.parallel < 2 || !seen_.verdict().right()) return;
        auto const capacity = tied ? tied_capacity(form) : bank_capacity(form);
        bool const large = capacity && exceeds(*capacity, parallel_bank_limit());
        if (form.parallel < 3 && !graph_.lithium && !large) return;
        if (tied) {
            if (auto const batteries = fed_without_device(); !batteries.empty())
                say_parallel(form, fmt::to_string(form.parallel), batteries, large ? capacity : std::nullopt);
            return;
        }
        std::vector<bool> bare(form.strings.size(), false);
        auto const region = regions_without_device(graph_);
        auto const joined = [&](int a, int b) {
            return region[static_cast<std::size_t>(a)] == region[static_cast<std::size_t>(b)];
        };
        auto const whole = [&](std::vector<int> const& string) { // no device inside it
            for (std::size_t k = 1; k < string.size(); ++k)
                if (!joined(edge(string[k - 1]).to, edge(string[k]).from)) return false;
            return true;
        };
        for (std::size_t a = 0; a < form.strings.size(); ++a)
            for (std::size_t b = a + 1; b < form.strings.size(); ++b) {
                auto const& s = form.strings[a];
                auto const& t = form.strings[b];
                if (!joined(edge(s.back()).to, edge(t.back()).to) ||
                    !joined(edge(s.front()).from, edge(t.front()).from))
                    continue;
                if (whole(s) && whole(t)) bare[a] = bare[b] = true;
            }
        std::vector<std::string> batteries;
        std::size_t strings = 0;
        for (std::size_t s = 0; s < bare.size(); ++s) {
            if (!bare[s]) continue;
            ++strings;
            for (auto const e : form.strings[s])
                batteries.push_back(graph_.id(edge(e)));
        }
        if (batteries.empty()) return;
        auto const how_many =
            strings == bare.size() ? fmt::to_string(strings) : fmt::format("{} of {}", strings, bare.size());
        say_parallel(form, how_many, batteries, large ? capacity : std::nullopt);
    }

    // `large`: what the strings hold together, where that alone asks for devices.
    void say_parallel(Arrangement const& form, std::string const& how_many, std::vector<std::string> batteries,
                      std::optional<Charge> large) {
        constexpr auto rule = rule_named(protection_rules, "protection/parallel-string");
        bool const tied = form.form == ArrangementForm::cross_tied;
        auto message = fmt::format("{} parallel {}{} without a breaker or fuse each: {}", how_many,
                                   graph_.lithium ? "lithium strings" : "strings",
                                   tied ? ", tied part of the way up," : "", quoted_list(batteries));
        if (large)
            message += fmt::format("; of the {} together, ABYC E-11 asks for one at each battery above {}",
                                   print(*large), print(parallel_bank_limit()));
        auto const help = tied ? "put a fuse at one post of every battery, or remove the ties and put one at one end "
                                 "of every string"
                               : std::string(rule.fix);
        auto finding = finding_of(rule, std::move(message), help);
        measured(finding, static_cast<double>(form.parallel), graph_.lithium || large ? 1.0 : 2.0, "").parts =
            std::move(batteries);
        findings_.push_back(std::move(finding));
    }

    // On a closed path with other batteries that no breaker or fuse is in.
    std::vector<std::string> fed_without_device() const {
        auto const on_ring = on_rings_of_batteries(graph_, false);
        std::vector<std::string> names;
        for (std::size_t e = 0; e < graph_.edges.size(); ++e)
            if (graph_.edges[e].kind == WiringEdgeKind::battery && on_ring[e])
                names.push_back(graph_.id(graph_.edges[e]));
        return names;
    }

    // What the batteries hold between two levels, on the average; none unless every battery states it.
    std::optional<Charge> tied_capacity(Arrangement const& form) const {
        Charge total{};
        for (auto const& battery : bank_.batteries) {
            if (!battery.capacity) return std::nullopt;
            total += *battery.capacity;
        }
        return total / static_cast<double>(form.series);
    }

    // Of all strings together; none unless every battery of them states it. A string holds what its least battery does.
    std::optional<Charge> bank_capacity(Arrangement const& form) const {
        Charge total{};
        for (auto const& string : form.strings) {
            std::optional<Charge> least;
            for (auto const e : string) {
                auto const& battery = bank_.batteries[graph_.parts[static_cast<std::size_t>(edge(e).part)].index];
                if (!battery.capacity) return std::nullopt;
                if (!least || *battery.capacity < *least) least = *battery.capacity;
            }
            if (least) total += *least;
        }
        return total;
    }

    WiringEdge const& edge(int e) const { return graph_.edges[static_cast<std::size_t>(e)]; }

    Seen const& seen_;
    Bank const& bank_;
    WiringGraph const& graph_;
    Findings& findings_;
    std::optional<std::vector<DeviceDuty>> duties_; // once a device states what it interrupts
    std::optional<BoltedShorts> shorts_; // once a device asks: behind a wiring that is not right there is no network
    std::vector<char> ties_batteries_;   // by edge
    std::set<std::string> fed_by_a_battery_; // devices with none between them and a battery's positive post
    std::vector<std::string> unknown_bands_;
};

} // namespace bankwright::internal
