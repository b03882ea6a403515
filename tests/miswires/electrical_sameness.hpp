// Is a miswired bank electrically the same as the good one? Judged here by ideal wires alone and without the library's
// own graph: which posts of batteries and loads are one point, and does every load still have a device before it?
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/terminals.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

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
        for (auto const& s : bank.shunts)
            join(s.id + ".1", s.id + ".2");
        for (auto const& r : bank.relays)
            join(r.id + ".1", r.id + ".2");
        for (auto const& s : bank.selectors) {
            join(s.id + ".1", s.id + ".common");
            join(s.id + ".2", s.id + ".common");
        }
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

// What the circuit is, whichever battery stands where (they are all alike here): the points that posts are joined to,
// each told by what it is joined to, and that by what it is joined to, and so on (color refinement: far enough on it
// tells every string and level of these banks apart); and which loads and chargers a battery reaches with no device
// between.
struct Circuit {
    std::multiset<std::uint64_t> points;
    std::set<std::string> unprotected;

    friend bool operator==(Circuit const&, Circuit const&) = default;
};

inline std::uint64_t scrambled(std::uint64_t x) { // splitmix64
    x += 0x9e3779b97f4a7c15U;
    x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9U;
    x = (x ^ (x >> 27)) * 0x94d049bb133111ebU;
    return x ^ (x >> 31);
}

inline Circuit circuit_of(Bank const& bank) {
    IdealWires const wires(bank);
    IdealWires const bare(bank, false);
    struct Element {
        std::uint64_t name; // of a load or charger; batteries have none
        std::size_t plus, minus;
    };
    std::vector<Element> elements;
    std::map<std::string, std::size_t> number; // of a point
    auto const element = [&](std::string const& name, std::string const& plus, std::string const& minus) {
        auto const at = [&](std::string const& t) {
            return number.emplace(wires.point(t), number.size()).first->second;
        };
        auto const p = at(plus);
        elements.push_back({std::hash<std::string>{}(name), p, at(minus)});
    };
    std::set<std::string> battery_positives;
    for (auto const& b : bank.batteries) {
        element("", b.id + "+", b.id + "-");
        battery_positives.insert(bare.point(b.id + "+"));
    }
    Circuit circuit;
    auto const load = [&](std::string const& id) {
        element(id, id + "+", id + "-");
        if (battery_positives.count(bare.point(id + "+"))) circuit.unprotected.insert(id);
    };
    for (auto const& m : bank.motors)
        load(m.id);
    for (auto const& l : bank.loads)
        load(l.id);
    for (auto const& c : bank.chargers) { // the battery feeds a short in a charger's leads as it feeds one in a load's
        element(c.id, c.id + ".1+", c.id + ".1-");
        if (battery_positives.count(bare.point(c.id + ".1+"))) circuit.unprotected.insert(c.id);
    }

    std::vector<std::uint64_t> color(number.size(), 0);
    for (int step = 0; step < 10; ++step) { // twice the longest string
        auto next = color;
        for (auto& c : next)
            c = scrambled(c);
        for (auto const& e : elements) { // sums, so that the order does not matter
            next[e.plus] += scrambled(e.name + 3 * color[e.minus] + 1);
            next[e.minus] += scrambled(e.name + 5 * color[e.plus] + 2);
        }
        color = std::move(next);
    }
    circuit.points.insert(color.begin(), color.end());
    return circuit;
}

// Of a bank whose circuit has changed: do the solved numbers say that only the sharing between batteries has? Every
// load sees its voltage to 2 % (links of some milliohms more or less), nothing flows at rest, no battery is charged by
// another, and every battery still takes part; and the devices before the loads are as they were.
inline bool only_sharing_changes(Bank const& good, Bank const& other) {
    auto const was = circuit_of(good).unprotected;
    for (auto const& load : circuit_of(other).unprotected)
        if (!was.count(load)) return false;
    auto const numbers = [](Bank const& bank, LoadsAre loads) {
        OperatingPointOptions options;
        options.moment.loads = loads;
        return operating_point(bank, options);
    };
    auto const before = numbers(good, LoadsAre::as_described);
    auto const after = numbers(other, LoadsAre::as_described);
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

inline Bank without_chargers(Bank bank) {
    bank.chargers.clear(); // and its leads hang in the air, joined to what they are joined to
    for (auto* runs : {&bank.jumpers, &bank.cables})
        runs->erase(std::remove_if(runs->begin(), runs->end(),
                                   [](Run const& run) {
                                       return run.from.rfind("shore.", 0) == 0 || run.to.rfind("shore.", 0) == 0;
                                   }),
                    runs->end());
    return bank;
}

// Of a bank with a charger: does the rest stay as it was, and the charger not feed it backwards?
inline bool only_charging_changes(Bank const& good, Bank const& other) {
    if (good.chargers.empty() || circuit_of(without_chargers(good)) != circuit_of(without_chargers(other)))
        return false;
    IdealWires const wires(other);
    auto const& id = other.chargers.front().id;
    auto const& last = good.batteries.back(); // of one string
    return wires.point(id + ".1+") != wires.point(good.batteries.front().id + "-") &&
           wires.point(id + ".1-") != wires.point(last.id + "+");
}

} // namespace miswires
