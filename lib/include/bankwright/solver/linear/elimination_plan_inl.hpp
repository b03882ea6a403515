// Bodies of elimination_plan.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/elimination_plan.hpp"

#include <algorithm>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <memory>

namespace bankwright::solver {

namespace internal {

// Which nodes touch which: a bit a pair, so that a pivot's neighbors join each other 64 at a time.
class NodeBits {
public:
    explicit NodeBits(int nodes) : words_((as_index(nodes) + 63) / 64), bits_(as_index(nodes) * words_, 0) {}

    void set(int row, int node) { word(row, node) |= mask(node); }
    void clear(int row, int node) { word(row, node) &= ~mask(node); }
    void add_row(int to, int from) {
        for (std::size_t w = 0; w < words_; ++w)
            row(to)[w] |= row(from)[w];
    }
    int count(int node) const {
        int count = 0;
        for (std::size_t w = 0; w < words_; ++w)
            count += std::popcount(row(node)[w]);
        return count;
    }
    template <class Visit>
    void for_each(int node, Visit const& visit) const { // lowest first; the row must not change meanwhile
        for (std::size_t w = 0; w < words_; ++w)
            for (std::uint64_t left = row(node)[w]; left != 0; left &= left - 1)
                visit(static_cast<int>(64 * w) + std::countr_zero(left));
    }

private:
    std::uint64_t* row(int node) { return bits_.data() + as_index(node) * words_; }
    std::uint64_t const* row(int node) const { return bits_.data() + as_index(node) * words_; }
    std::uint64_t& word(int node, int other) { return row(node)[as_index(other) / 64]; }
    static std::uint64_t mask(int node) { return std::uint64_t{1} << (static_cast<unsigned>(node) % 64); }

    std::size_t words_;
    std::vector<std::uint64_t> bits_;
};

} // namespace internal

BANKWRIGHT_INLINE EliminationPlan plan_elimination(int nodes, std::vector<Line> const& lines,
                                                   std::vector<int> const& roots, int last) {
    internal::NodeBits near(
        nodes); // of the nodes that are left; of an eliminated one, what it touched when its turn came
    for (Line const& line : lines) {
        near.set(line.from, line.to);
        near.set(line.to, line.from);
    }
    std::vector<int> degree(as_index(nodes));
    for (int n = 0; n < nodes; ++n)
        degree[as_index(n)] = near.count(n);

    EliminationPlan plan;
    plan.nodes = nodes;
    plan.roots = roots;
    std::vector<int> place(as_index(nodes), -1); // in the order; roots, one to an island, come after all others
    for (int root : roots)
        place[as_index(root)] = nodes;

    int const eliminated = nodes - static_cast<int>(roots.size());
    plan.pivots.reserve(as_index(eliminated));
    for (int step = 0; step < eliminated; ++step) {
        int best = -1;
        for (int n = 0; n < nodes; ++n)
            if (place[as_index(n)] < 0 &&
                (best < 0 || best == last || (n != last && degree[as_index(n)] < degree[as_index(best)])))
                best = n;
        place[as_index(best)] = step;
        plan.pivots.push_back({best, plan.slots(), degree[as_index(best)], 0});
        near.for_each(best, [&](int a) {
            plan.later.push_back(a);
            near.add_row(a, best);
            near.clear(a, a);
            near.clear(a, best);
            degree[as_index(a)] = near.count(a);
        });
    }

    auto const earlier = [&](int a, int b) { return place[as_index(a)] < place[as_index(b)]; };
    for (Pivot const& pivot : plan.pivots) {
        auto const first = plan.later.begin() + pivot.first;
        std::sort(first, first + pivot.degree, earlier);
    }
    auto const slot_between = [&](int a, int b) { // a before b
        Pivot const& pivot = plan.pivots[as_index(place[as_index(a)])];
        auto const first = plan.later.begin() + pivot.first;
        return static_cast<int>(std::lower_bound(first, first + pivot.degree, b, earlier) - plan.later.begin());
    };
    for (Pivot& pivot : plan.pivots) {
        pivot.pair_first = static_cast<int>(plan.pairs.size());
        for (int i = pivot.first; i < pivot.first + pivot.degree; ++i) {
            int slot = i + 1 < pivot.first + pivot.degree
                           ? plan.pivots[as_index(place[as_index(plan.later[as_index(i)])])].first
                           : 0;
            for (int j = i + 1; j < pivot.first + pivot.degree; ++j) { // both lists are in the order of elimination
                while (plan.later[as_index(slot)] != plan.later[as_index(j)])
                    ++slot;
                plan.pairs.push_back(slot);
            }
        }
    }
    plan.backwards.reserve(lines.size());
    plan.slot.reserve(lines.size());
    for (Line const& line : lines) {
        bool const backwards = earlier(line.to, line.from);
        plan.backwards.push_back(backwards ? 1 : 0);
        plan.slot.push_back(backwards ? slot_between(line.to, line.from) : slot_between(line.from, line.to));
    }
    return plan;
}

BANKWRIGHT_INLINE std::shared_ptr<EliminationPlan const> plan_of(Topology const& topology) {
    if (topology.plan) return topology.plan;
    return std::make_shared<EliminationPlan const>(
        plan_elimination(topology.merged_nodes, topology.lines, topology.root));
}

BANKWRIGHT_INLINE Topology with_plan(Topology topology, int star_mesh_limit) {
    if (topology.merged_nodes <= star_mesh_limit)
        topology.plan = std::make_shared<EliminationPlan const>(
            plan_elimination(topology.merged_nodes, topology.lines, topology.root));
    return topology;
}

} // namespace bankwright::solver
