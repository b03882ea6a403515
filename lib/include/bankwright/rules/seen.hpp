// What a rule may look at. Everything is computed once, when first asked for.
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/positions.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/rules/nameplate.hpp"
#include "bankwright/wiring/arrangement.hpp"
#include "bankwright/wiring/wiring_repair.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace bankwright {

class Seen {
public:
    explicit Seen(Bank const& bank, bool whole = true)
        : bank_(bank), whole_(whole), graph_(wiring_graph(bank)), verdict_(judge(graph_, graph_.edges)),
          standing_(bankwright::standing_edges(bank, graph_)), standing_verdict_(judge(graph_, standing_)),
          bank_of_(bank_of_batteries(graph_, standing_)) {}

    Bank const& bank() const { return bank_; }
    bool whole() const { return whole_; } // else parts of it could not be read, and what joins what is not known
    WiringGraph const& graph() const { return graph_; }
    WiringVerdict const& verdict() const { return verdict_; } // of the wiring as described, all devices closed

    Arrangement const& arrangement() const {
        if (!arrangement_) arrangement_ = arrangement_of_largest();
        return *arrangement_;
    }
    // The same with what selectors and relays leave open in this bank left out; the groups of arrangement() are its.
    WiringVerdict const& standing_verdict() const { return standing_verdict_; }
    // By battery, in the author's order: the number of its bank. Behind a wrong wiring all are one.
    std::vector<int> bank_of_batteries_or_one() const {
        return verdict_.right() ? bank_of_ : std::vector<int>(bank_of_.size(), 0);
    }
    // The same with every selector off, and every relay and every switch drawn open open: what a switch can part is not
    // one bank, whatever the position that is looked at.
    std::vector<int> const& bank_when_parted() const {
        if (!bank_when_parted_) bank_when_parted_ = separable_banks(bank_);
        return *bank_when_parted_;
    }
    // Of one bank of batteries; none where the batteries are few.
    Arrangement arrangement_of(int bank) const {
        auto edges = standing_;
        std::size_t battery = 0;
        for (auto& edge : edges)
            if (edge.kind == WiringEdgeKind::battery) edge.removed = bank_of_batteries_or_one()[battery++] != bank;
        return bankwright::arrangement(graph_, edges, judge(graph_, edges));
    }
    // All devices closed, every load off: what the wiring itself drives.
    OperatingPoint const& at_rest() const {
        if (!at_rest_) at_rest_ = solve(LoadsAre::at_rest, true);
        return *at_rest_;
    }
    // All devices closed, loads as the file describes them; a starter, that runs for seconds, is not among them.
    OperatingPoint const& working() const {
        if (!working_) working_ = solve(LoadsAre::as_described, true);
        return *working_;
    }

    // The same with every converter off: what the batteries do by themselves.
    OperatingPoint const& by_themselves() const {
        if (bank_.converters.empty()) return working();
        if (!by_themselves_) by_themselves_ = solve(LoadsAre::as_described, true, {}, false, false);
        return *by_themselves_;
    }

    // The same with every motor at full throttle: what conductors, devices and connections must bear.
    OperatingPoint const& full() const {
        if (runs_full()) return working();
        if (!full_) full_ = solve(LoadsAre::as_described, true, Throttle::of(1.0));
        return *full_;
    }
    // Every motor and load draws what is on its nameplate, whatever the copper leaves of it; no charger helps.
    OperatingPoint const& by_nameplate() const {
        if (!by_nameplate_) {
            OperatingPointOptions options;
            options.moment.everything_closed = true;
            options.moment.combined = false;
            options.moment.starters = false;
            by_nameplate_ = operating_point(at_nameplate(bank_, graph_, verdict_), options);
        }
        return *by_nameplate_;
    }
    // Every starter cranks, and whatever else the file describes runs.
    OperatingPoint const& cranking() const {
        if (!cranking_) cranking_ = solve(LoadsAre::as_described, true, {}, true);
        return *cranking_;
    }
    bool full_is_sound() const { return verdict_.right() && full().status == solver::Status::solved; }

    // A charger's outputs share a negative inside, and that alone closes a loop of batteries.
    bool common_negative_shorts() const {
        auto edges = graph_.edges;
        bool any = false;
        for (auto& e : edges) {
            if (e.kind != WiringEdgeKind::contact) continue;
            e.removed = graph_.parts[static_cast<std::size_t>(e.part)].kind == PartKind::charger;
            any = any || e.removed;
        }
        if (!any || (verdict_.shorted.empty() && verdict_.clashes.empty())) return false;
        auto const apart = judge(graph_, edges);
        return apart.shorted.empty() && apart.clashes.empty();
    }

    // Numbers mean something only behind a wiring that is right and a bank that has an operating point.
    bool is_sound() const { return verdict_.right() && working().status == solver::Status::solved; }
    bool at_rest_is_sound() const { return verdict_.right() && at_rest().status == solver::Status::solved; }
    // A charger is plugged in: what flows into a battery may come from it.
    bool is_charging() const {
        return std::any_of(bank_.chargers.begin(), bank_.chargers.end(),
                           [](auto const& c) { return c.connected.value_or(false); });
    }

    bool runs_full() const { // as the file describes its motors
        return std::all_of(bank_.motors.begin(), bank_.motors.end(),
                           [](auto const& m) { return m.throttle.value_or(Throttle::of(1.0)) == Throttle::of(1.0); });
    }
    // Three hours, from where NEC (NFPA 70), article 100, calls a load continuous [from memory].
    bool runs_for_hours() const {
        return bank_.system.runtime && bank_.system.runtime->value() >= 3.0 * 3600.0 * (1.0 - 1e-9);
    }

private:
    Arrangement arrangement_of_largest() const {
        if (!verdict_.right()) return bankwright::arrangement(graph_, standing_, standing_verdict_);
        std::vector<int> banks = bank_of_;
        std::stable_sort(banks.begin(), banks.end(), [&](int a, int b) {
            return std::count(bank_of_.begin(), bank_of_.end(), a) > std::count(bank_of_.begin(), bank_of_.end(), b);
        });
        bool const is_one = std::all_of(banks.begin(), banks.end(), [&](int bank) { return bank == banks.front(); });
        return is_one ? bankwright::arrangement(graph_, standing_, standing_verdict_) : arrangement_of(banks.front());
    }

    OperatingPoint solve(LoadsAre loads, bool closed, std::optional<Throttle> throttle = {}, bool starters = false,
                         bool converters = true) const {
        OperatingPointOptions options;
        options.moment.starters = starters;
        options.moment.converters = converters;
        options.moment.combined = false;
        options.moment.throttle = throttle;
        options.moment.loads = loads;
        options.moment.everything_closed = closed;
        options.moment.chargers = loads != LoadsAre::at_rest;
        return operating_point(bank_, options);
    }

    Bank const& bank_;
    bool whole_;
    WiringGraph graph_;
    WiringVerdict verdict_;
    std::vector<WiringEdge> standing_;
    WiringVerdict standing_verdict_;
    std::vector<int> bank_of_; // by battery
    mutable std::optional<std::vector<int>> bank_when_parted_;
    mutable std::optional<OperatingPoint> cranking_;
    mutable std::optional<Arrangement> arrangement_;
    mutable std::optional<OperatingPoint> at_rest_;
    mutable std::optional<OperatingPoint> working_;
    mutable std::optional<OperatingPoint> by_themselves_;
    mutable std::optional<OperatingPoint> full_;
    mutable std::optional<OperatingPoint> by_nameplate_;
};

// What an operating point says of one part; nullptr if it says nothing.
inline PartReading const* reading_if_any(OperatingPoint const& point, std::string const& id) {
    for (auto const& reading : point.parts)
        if (reading.id == id) return &reading;
    return nullptr;
}

// What a part must bear: the larger of what flows through it at full throttle and what would by the nameplates of all
// that is behind it.
struct Borne {
    Current most{};
    Current solved{};
    Current by_nameplate{};

    bool rests_on_nameplate() const { return by_nameplate > solved * (1.0 + 1e-6); }
    // A motor on a full battery takes a little more than its nameplate, if its control lets it.
    bool is_little_above_nameplate(Current limit) const {
        constexpr double little = 1.1;
        return by_nameplate.value() > 0.0 && by_nameplate <= limit * (1.0 + 1e-9) && solved <= little * by_nameplate;
    }
};

inline std::optional<Borne> borne_by(Seen const& seen, std::string const& id) {
    auto const* reading = reading_if_any(seen.full(), id);
    if (!reading) return std::nullopt;
    Borne borne;
    borne.solved = std::abs(reading->current.value()) * si::ampere;
    if (seen.by_nameplate().status == solver::Status::solved)
        if (auto const* rated = reading_if_any(seen.by_nameplate(), id))
            borne.by_nameplate = std::abs(rated->current.value()) * si::ampere;
    borne.most = std::max(borne.solved, borne.by_nameplate);
    return borne;
}

// What flows for as long as the bank is wanted to run: every motor at its own throttle, and by its nameplate where that
// is full.
inline std::optional<Current> lasting_current(Seen const& seen, std::string const& id) {
    auto const* reading = reading_if_any(seen.working(), id);
    if (!reading) return std::nullopt;
    auto const borne = seen.runs_full() ? borne_by(seen, id) : std::nullopt;
    return std::max(Current(std::abs(reading->current.value()) * si::ampere), borne ? borne->most : Current{});
}

} // namespace bankwright
