// Bodies of places.hpp.
#pragma once

#include "bankwright/bank/terminals.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/graph/union_find.hpp"
#include "bankwright/wiring/places.hpp"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <limits>
#include <queue>
#include <type_traits>
#include <utility>

namespace bankwright {

namespace internal::placing {

struct Stretch { // a conductor between two parts
    int from = 0, to = 0;
    double meters = 0.0;
    bool is_short = false;
};

// Joins what lies together, and keeps what the file says of each place.
class PlaceFinder {
public:
    explicit PlaceFinder(Bank const& bank) : bank_(bank) {
        for_each_part(bank, [&](PartKind kind, auto const& part) {
            auto const terminals = terminals_of(part);
            if (terminals.empty()) return;
            for (auto const& terminal : terminals)
                part_at_.emplace(terminal, static_cast<int>(parts_.size()));
            parts_.push_back({kind, id_of(part), terminals});
        });
        names_.resize(parts_.size());
    }

    Places find() {
        solver::UnionFind sets(static_cast<int>(parts_.size()));
        std::unordered_map<std::string, int> first_named;
        std::size_t p = 0;
        for_each_part(bank_, [&](PartKind, auto const& part) {
            if constexpr (!std::is_same_v<std::remove_cvref_t<decltype(part)>, Run>)
                give(part.place, static_cast<int>(p++), sets, first_named);
        });
        for (auto const& [line, post] : seats(bank_))
            if (auto const at = part_at_.find(post); at != part_at_.end()) join(at->second, part_at_.at(line), sets);
        auto stretches = this->stretches(sets, first_named);
        for (auto const& one : stretches)
            if (one.is_short) join(one.from, one.to, sets);
        return places(sets, stretches);
    }

private:
    struct Placed {
        PartKind kind;
        std::string id;
        std::vector<std::string> terminals;
    };

    std::string& name_of(int part, solver::UnionFind& sets) {
        return names_[static_cast<std::size_t>(sets.find(part))];
    }

    bool join(int a, int b, solver::UnionFind& sets) {
        auto const one = name_of(a, sets), other = name_of(b, sets);
        if (!one.empty() && !other.empty() && one != other) return false;
        sets.unite(a, b);
        name_of(a, sets) = one.empty() ? other : one;
        return true;
    }

    void give(std::optional<std::string> const& name, int part, solver::UnionFind& sets,
              std::unordered_map<std::string, int>& first_named) {
        if (!name || name->empty() || !name_of(part, sets).empty()) return;
        name_of(part, sets) = *name;
        auto const [known, is_new] = first_named.emplace(*name, part);
        if (!is_new) join(known->second, part, sets);
    }

    // Every conductor, the shorter first; one whose own place is said has both its ends there.
    std::vector<Stretch> stretches(solver::UnionFind& sets, std::unordered_map<std::string, int>& first_named) {
        std::vector<Stretch> all;
        auto const add = [&](Run const& run, bool is_jumper) {
            auto const from = part_at_.find(run.from), to = part_at_.find(run.to);
            if (from == part_at_.end() || to == part_at_.end()) return;
            auto const length = length_of(run, bank_.system);
            bool const is_short = length ? length->value() < one_place : is_jumper;
            all.push_back({from->second, to->second, length ? length->value() : is_jumper ? 0.0 : one_place, is_short});
            if (!run.conductor.place) return;
            give(run.conductor.place, from->second, sets, first_named);
            give(run.conductor.place, to->second, sets, first_named);
        };
        for (auto const& run : bank_.jumpers)
            add(run, true);
        for (auto const& run : bank_.cables)
            add(run, false);
        std::stable_sort(all.begin(), all.end(),
                         [](Stretch const& a, Stretch const& b) { return a.meters < b.meters; });
        return all;
    }

    Places places(solver::UnionFind& sets, std::vector<Stretch> const& stretches) {
        Places found;
        std::vector<int> number(parts_.size(), -1), rank;
        for (std::size_t p = 0; p < parts_.size(); ++p) {
            auto const root = static_cast<std::size_t>(sets.find(static_cast<int>(p)));
            if (number[root] < 0) {
                number[root] = static_cast<int>(found.names.size());
                found.names.push_back(names_[root]);
                rank.push_back(std::numeric_limits<int>::max());
            }
            auto const place = static_cast<std::size_t>(number[root]);
            if (names_[root].empty() && telling(parts_[p].kind) < rank[place]) {
                rank[place] = telling(parts_[p].kind);
                found.names[place] = "by " + parts_[p].id;
            }
            for (auto const& terminal : parts_[p].terminals) {
                found.of.push_back(number[root]);
                found.at.emplace(terminal, number[root]);
            }
        }
        found.ways.resize(found.names.size());
        for (auto const& one : stretches) {
            int const a = number[static_cast<std::size_t>(sets.find(one.from))],
                      b = number[static_cast<std::size_t>(sets.find(one.to))];
            if (a == b) continue;
            found.ways[static_cast<std::size_t>(a)].emplace_back(b, one.meters);
            found.ways[static_cast<std::size_t>(b)].emplace_back(a, one.meters);
        }
        return found;
    }

    // What a place is called by, the best known first.
    static int telling(PartKind kind) {
        switch (kind) {
        case PartKind::battery:
            return 0;
        case PartKind::connector:
            return 1;
        case PartKind::motor:
        case PartKind::load:
            return 2;
        case PartKind::charger:
        case PartKind::converter:
            return 3;
        default:
            return 4;
        }
    }

    Bank const& bank_;
    std::vector<Placed> parts_;                    // without conductors
    std::unordered_map<std::string, int> part_at_; // by terminal
    std::vector<std::string> names_;               // by the part that stands for a set: what the file calls the place
};

} // namespace internal::placing

BANKWRIGHT_INLINE std::optional<Length> length_of(Run const& run, System const& system) {
    auto const& conductor = run.conductor;
    if (conductor.length) return conductor.length;
    if (!conductor.size || !conductor.resistance) return std::nullopt;
    auto const copper = *conductor.resistance - 2.0 * conductor.joint.value_or(system.joint);
    if (copper.value() <= 0.0) return 0.0 * si::meter;
    return Length(copper / copper_resistance(conductor.size->area(), conductor.temperature.value_or(system.ambient)));
}

BANKWRIGHT_INLINE Places places_of(Bank const& bank) { return internal::placing::PlaceFinder(bank).find(); }

BANKWRIGHT_INLINE std::vector<char> within_reach(Places const& places, int start, Run const& run, PartKind kind,
                                                 System const& system) {
    std::vector<char> reached(places.names.size(), 0);
    auto const length = length_of(run, system);
    if (!length && kind == PartKind::cable) {
        std::fill(reached.begin(), reached.end(), 1);
        return reached;
    }
    double const most = length ? 1.25 * length->value() : 0.0;
    using Reached = std::pair<double, int>; // [m], place
    std::priority_queue<Reached, std::vector<Reached>, std::greater<>> open;
    open.emplace(0.0, start);
    while (!open.empty()) {
        auto const [meters, place] = open.top();
        open.pop();
        if (std::exchange(reached[static_cast<std::size_t>(place)], char{1})) continue;
        for (auto const& [next, way] : places.ways[static_cast<std::size_t>(place)])
            if (meters + way <= most) open.emplace(meters + way, next);
    }
    return reached;
}

} // namespace bankwright
