// A variant as changes of rank one: between which two nodes, by how much?
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/topology.hpp"
#include "bankwright/solver/variant.hpp"

#include <cstddef>
#include <limits>
#include <vector>

namespace bankwright::solver {

// The extra current from `a` to `b` is siemens x (V[a] - V[b]) + amps.
struct VariantTerm {
    int a = 0, b = 0;
    double siemens = 0.0, amps = 0.0;
};

// The circuit that changes are measured against, with what each change asks of it side by side.
class VariantBase {
public:
    VariantBase() = default;
    VariantBase(Circuit const& circuit, Topology const& topology) : nodes_(static_cast<unsigned>(circuit.nodes)) {
        if (topology.root.size() > 1) islands_ = topology.island;
        for (Branch const& b : circuit.branches) {
            double const g = 1.0 / b.resistance;
            branches_.push_back({b.from, b.to, b.resistance, g, g * b.emf});
        }
    }

    // Writes at most `most` terms; returns how many there are, or -1 if no update will do: a wrong number, a branch
    // that the base does not have or that is changed twice, nodes on different islands, more terms than that. The two
    // terms of a branch that keeps one of its ends both begin there.
    __attribute__((always_inline)) int terms(Change const* changes, std::size_t each, VariantTerm* into,
                                             int most) const {
        if (each == 1) return terms_of(changes[0], into, most); // what is asked most, and most at a time
        if (changes_twice(changes, each)) return -1;
        int count = 0;
        for (std::size_t i = 0; i < each; ++i) {
            int const more = terms_of(changes[i], into + count, most - count);
            if (more < 0) return -1;
            count += more;
        }
        return count;
    }

private:
    struct Known {
        int from, to;
        double resistance, siemens, amps; // [ohm, S, A]
    };

    __attribute__((always_inline)) int terms_of(Change const& change, VariantTerm* into, int most) const {
        constexpr double infinity = std::numeric_limits<double>::infinity();
        Branch const& now = change.now;
        bool const is_gone = now.resistance == infinity;
        if (!(now.resistance > 0.0) || !(now.emf - now.emf == 0.0)) return -1;
        if (change.branch < 0) {
            if (is_gone) return 0;
            double const g = 1.0 / now.resistance;
            if (!is_within(now) || most < 1 || g == infinity) return -1;
            into[0] = {now.from, now.to, g, g * now.emf};
            return are_joined(into[0]) ? 1 : -1;
        }
        auto const b = as_index(change.branch);
        if (b >= branches_.size()) return -1;
        Known const& was = branches_[b];
        double const g = now.resistance == was.resistance ? was.siemens : 1.0 / now.resistance, amps = g * now.emf;
        if (g == infinity) return -1;
        bool const keeps_from = was.from == now.from, keeps_to = was.to == now.to;
        if (is_gone || (keeps_from && keeps_to)) {
            if (most < 1) return -1;
            double const more = is_gone ? -was.siemens : (was.resistance - now.resistance) * was.siemens * g;
            into[0] = {was.from, was.to, more, amps - was.amps};
            return 1;
        }
        if (!is_within(now) || most < 2) return -1;
        if (keeps_to) {
            into[0] = {was.to, was.from, -was.siemens, was.amps};
            into[1] = {now.to, now.from, g, -amps};
        } else {
            into[0] = {was.from, was.to, -was.siemens, -was.amps};
            into[1] = {now.from, now.to, g, amps};
        }
        return are_joined(into[1]) ? 2 : -1;
    }

    bool is_within(Branch const& branch) const {
        return static_cast<unsigned>(branch.from) < nodes_ && static_cast<unsigned>(branch.to) < nodes_;
    }
    bool are_joined(VariantTerm const& term) const {
        return islands_.empty() || islands_[as_index(term.a)] == islands_[as_index(term.b)];
    }
    static bool changes_twice(Change const* changes, std::size_t each) { // a branch
        for (std::size_t i = 1; i < each; ++i)
            for (std::size_t j = 0; j < i; ++j)
                if (changes[i].branch >= 0 && changes[i].branch == changes[j].branch) return true;
        return false;
    }

    std::vector<Known> branches_;
    unsigned nodes_ = 0;
    std::vector<int> islands_; // by node; empty if there is one
};

} // namespace bankwright::solver
