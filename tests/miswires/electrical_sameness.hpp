// Is a miswired bank electrically the same as the good one? Judged here by ideal wires alone and without the library's
// own graph: which posts of batteries and loads are one point, and does every load still have a device before it?
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/terminals.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>

namespace miswires {

using namespace bankwright;

class IdealWires {
public:
    explicit IdealWires(Bank const& bank, bool through_protection = true) {
        for (auto const& t : terminals_of(bank))
            name_[t] = t;
        for (auto const* runs : {&bank.jumpers, &bank.cables})
            for (auto const& run : *runs)
                join(run.from, run.to);
        for (auto const& c : bank.connectors) {
            join(c.id + "+", c.id + ".plug+");
            join(c.id + "-", c.id + ".plug-");
        }
        for (auto const& s : bank.switches)
            join(s.id + ".1", s.id + ".2");
        if (!through_protection) return;
        for (auto const* devices : {&bank.breakers, &bank.fuses})
            for (auto const& d : *devices)
                join(d.id + ".line", d.id + ".load");
    }
    std::string point(std::string const& terminal) const {
        auto at = terminal;
        while (name_.at(at) != at)
            at = name_.at(at);
        return at;
    }

private:
    void join(std::string const& a, std::string const& b) { name_[point(a)] = point(b); }
    std::map<std::string, std::string> name_;
};

// What the circuit is: the sets of posts that are one point, and which loads a battery reaches with no device between.
inline std::set<std::set<std::string>> circuit_of(Bank const& bank) {
    IdealWires const wires(bank);
    IdealWires const bare(bank, false);
    std::map<std::string, std::set<std::string>> points;
    std::set<std::string> battery_positives;
    for (auto const& b : bank.batteries) {
        points[wires.point(b.id + "+")].insert(b.id + "+");
        points[wires.point(b.id + "-")].insert(b.id + "-");
        battery_positives.insert(bare.point(b.id + "+"));
    }
    std::set<std::set<std::string>> circuit;
    auto const load = [&](std::string const& id) {
        points[wires.point(id + "+")].insert(id + "+");
        points[wires.point(id + "-")].insert(id + "-");
        if (battery_positives.count(bare.point(id + "+"))) circuit.insert({"unprotected", id});
    };
    for (auto const& m : bank.motors)
        load(m.id);
    for (auto const& l : bank.loads)
        load(l.id);
    for (auto const& [point, posts] : points)
        circuit.insert(posts);
    return circuit;
}

// Of a bank whose circuit has changed: do the solved numbers say that only the sharing between batteries has? Every
// load sees its voltage to 2 % (links of some milliohms more or less), nothing flows at rest, no battery is charged by
// another, and every battery still takes part; and the devices before the loads are as they were.
inline bool only_sharing_changes(Bank const& good, Bank const& other) {
    for (auto const& set : circuit_of(other))
        if (set.count("unprotected") && !circuit_of(good).count(set)) return false;
    auto const numbers = [](Bank const& bank, LoadsAre loads) {
        OperatingPointOptions options;
        options.moment.loads = loads;
        return operating_point(bank, options);
    };
    auto const before = numbers(good, LoadsAre::as_drawn);
    auto const after = numbers(other, LoadsAre::as_drawn);
    auto const rest = numbers(other, LoadsAre::at_rest);
    if (after.status != solver::Status::solved || rest.status != solver::Status::solved) return false;
    for (auto const& part : rest.parts)
        if (part.kind == PartKind::battery && std::abs(part.current.value()) > 1e-6) return false;
    for (auto const& part : after.parts) {
        if (part.kind == PartKind::battery && part.current.value() < 0.1) return false;
        if (part.kind != PartKind::motor && part.kind != PartKind::load) continue;
        auto const same =
            std::find_if(before.parts.begin(), before.parts.end(), [&](auto const& p) { return p.id == part.id; });
        if (std::abs(part.voltage.value() - same->voltage.value()) > 0.02 * same->voltage.value()) return false;
    }
    return true;
}

} // namespace miswires
