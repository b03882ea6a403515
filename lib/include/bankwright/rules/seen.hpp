// What a rule may look at. Everything is computed once, when first asked for.
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/wiring/arrangement.hpp"
#include "bankwright/wiring/wiring_repair.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace bankwright {

class Seen {
public:
    explicit Seen(Bank const& bank, bool whole = true)
        : bank_(bank), whole_(whole), graph_(wiring_graph(bank)), verdict_(judge(graph_, graph_.edges)) {}

    Bank const& bank() const { return bank_; }
    bool whole() const { return whole_; } // else parts of it could not be read, and what joins what is not known
    WiringGraph const& graph() const { return graph_; }
    WiringVerdict const& verdict() const { return verdict_; } // of the wiring as described, all devices closed

    Arrangement const& arrangement() const {
        if (!arrangement_) arrangement_ = bankwright::arrangement(graph_, graph_.edges, verdict_);
        return *arrangement_;
    }
    // All devices closed, every load off: what the wiring itself drives.
    OperatingPoint const& at_rest() const {
        if (!at_rest_) at_rest_ = solve(LoadsAre::at_rest, true);
        return *at_rest_;
    }
    // All devices closed, loads as the file describes them.
    OperatingPoint const& working() const {
        if (!working_) working_ = solve(LoadsAre::as_described, true);
        return *working_;
    }

    // The same with every motor at full throttle: what conductors, devices and connections must bear.
    OperatingPoint const& full() const {
        if (runs_full()) return working();
        if (!full_) full_ = solve(LoadsAre::as_described, true, Throttle::of(1.0));
        return *full_;
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

private:
    bool runs_full() const {
        return std::all_of(bank_.motors.begin(), bank_.motors.end(),
                           [](auto const& m) { return m.throttle.value_or(Throttle::of(1.0)) == Throttle::of(1.0); });
    }

    OperatingPoint solve(LoadsAre loads, bool closed, std::optional<Throttle> throttle = {}) const {
        OperatingPointOptions options;
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
    mutable std::optional<Arrangement> arrangement_;
    mutable std::optional<OperatingPoint> at_rest_;
    mutable std::optional<OperatingPoint> working_;
    mutable std::optional<OperatingPoint> full_;
};

// What an operating point says of one part; nullptr if it says nothing.
inline PartReading const* reading_if_any(OperatingPoint const& point, std::string const& id) {
    for (auto const& reading : point.parts)
        if (reading.id == id) return &reading;
    return nullptr;
}

} // namespace bankwright
