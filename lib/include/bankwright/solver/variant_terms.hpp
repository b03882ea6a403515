// A variant as changes of rank one: between which two nodes, by how much?
#pragma once

#include <cstddef>
#include <limits>

#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/topology.hpp"
#include "bankwright/solver/variant.hpp"

namespace bankwright::solver {

// The extra current from `a` to `b` is siemens x (V[a] - V[b]) + amps.
struct VariantTerm {
    int a = 0, b = 0;
    double siemens = 0.0, amps = 0.0;
};

// Writes at most `room` terms; returns how many there are, or -1 if no update will do: a wrong number, a branch that
// the base does not have, nodes on different islands, more terms than room. `siemens` [S] by branch of the base. The
// two terms of a branch that keeps one of its ends both begin there.
inline int terms_of(Circuit const& base, Topology const& topology, double const* siemens, Change const* changes,
                    std::size_t each, VariantTerm* terms, int room) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    bool const several = topology.root.size() > 1; // islands
    int count = 0;
    for (Change const* change = changes; change != changes + each; ++change) {
        Branch const& now = change->now;
        if (!(now.resistance > 0.0) || !(now.emf - now.emf == 0.0)) return -1;
        auto const within = [&](int node) { return node >= 0 && node < base.nodes; };
        bool const is_gone = now.resistance == infinity;
        if (change->branch < 0) {
            double const g = 1.0 / now.resistance; // 0 if it is gone
            if (is_gone) continue;
            if (!within(now.from) || !within(now.to) || count == room || g == infinity) return -1;
            terms[count++] = {now.from, now.to, g, g * now.emf};
        } else {
            auto const b = static_cast<std::size_t>(change->branch);
            if (b >= base.branches.size()) return -1;
            Branch const& before = base.branches[b];
            double const was = siemens[b], g = now.resistance == before.resistance ? was : 1.0 / now.resistance;
            bool const is_there = is_gone || (before.from == now.from && before.to == now.to);
            if (count + (is_there ? 1 : 2) > room || g == infinity) return -1;
            if (is_there) {
                double const more = is_gone ? -was : (before.resistance - now.resistance) * was * g;
                terms[count++] = {before.from, before.to, more, g * now.emf - was * before.emf};
                continue;
            }
            if (!within(now.from) || !within(now.to)) return -1;
            double const amps = was * before.emf, amps_now = g * now.emf;
            if (before.to == now.to) {
                terms[count++] = {before.to, before.from, -was, amps};
                terms[count++] = {now.to, now.from, g, -amps_now};
            } else {
                terms[count++] = {before.from, before.to, -was, -amps};
                terms[count++] = {now.from, now.to, g, amps_now};
            }
        }
        VariantTerm const& last = terms[count - 1];
        if (several &&
            topology.island[static_cast<std::size_t>(last.a)] != topology.island[static_cast<std::size_t>(last.b)])
            return -1;
    }
    return count;
}

} // namespace bankwright::solver
