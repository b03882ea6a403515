// Bodies of elimination_plan.hpp.
#pragma once

#include <algorithm>
#include <memory>

#include "bankwright/solver/elimination_plan.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE EliminationPlan plan_elimination(int nodes, std::vector<Line> const& lines,
                                                   std::vector<int> const& roots, int last) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    std::vector<std::vector<int>> near(at(nodes)); // sorted; of the nodes that are left
    auto const link = [&](int a, int b) {
        auto& list = near[at(a)];
        auto const place = std::lower_bound(list.begin(), list.end(), b);
        if (place == list.end() || *place != b) list.insert(place, b);
    };
    for (Line const& line : lines) {
        link(line.from, line.to);
        link(line.to, line.from);
    }

    EliminationPlan plan;
    plan.nodes = nodes;
    plan.roots = roots;
    std::vector<int> place(at(nodes), -1); // in the order; roots come after all others
    for (std::size_t r = 0; r < roots.size(); ++r)
        place[at(roots[r])] = nodes + static_cast<int>(r);

    int const eliminated = nodes - static_cast<int>(roots.size());
    for (int step = 0; step < eliminated; ++step) {
        int best = -1;
        for (int n = 0; n < nodes; ++n)
            if (place[at(n)] < 0 &&
                (best < 0 || best == last || (n != last && near[at(n)].size() < near[at(best)].size())))
                best = n;
        place[at(best)] = step;
        std::vector<int> const& around = near[at(best)];
        for (int a : around) {
            auto& list = near[at(a)];
            list.erase(std::lower_bound(list.begin(), list.end(), best));
            for (int b : around)
                if (a != b) link(a, b);
        }
        plan.pivots.push_back({best, 0, static_cast<int>(around.size()), 0});
    }

    auto const earlier = [&](int a, int b) { return place[at(a)] < place[at(b)]; };
    std::vector<int> pivot_slot(at(nodes), 0); // by node: its first slot
    for (Pivot& pivot : plan.pivots) {
        auto& around = near[at(pivot.node)];
        std::sort(around.begin(), around.end(), earlier);
        pivot.first = pivot_slot[at(pivot.node)] = plan.slots();
        plan.later.insert(plan.later.end(), around.begin(), around.end());
    }
    auto const slot_between = [&](int a, int b) { // a before b
        auto const& around = near[at(a)];
        auto const found = std::lower_bound(around.begin(), around.end(), b, earlier);
        return pivot_slot[at(a)] + static_cast<int>(found - around.begin());
    };
    for (Pivot& pivot : plan.pivots) {
        pivot.pair_first = static_cast<int>(plan.pairs.size());
        auto const& around = near[at(pivot.node)];
        for (std::size_t i = 0; i < around.size(); ++i)
            for (std::size_t j = i + 1; j < around.size(); ++j)
                plan.pairs.push_back(slot_between(around[i], around[j]));
    }
    for (Line const& line : lines) {
        bool const backwards = earlier(line.to, line.from);
        plan.backwards.push_back(backwards ? 1 : 0);
        plan.slot.push_back(backwards ? slot_between(line.to, line.from) : slot_between(line.from, line.to));
    }
    return plan;
}

BANKWRIGHT_INLINE Topology with_plan(Topology topology, int star_mesh_limit) {
    if (topology.merged_nodes <= star_mesh_limit)
        topology.plan = std::make_shared<EliminationPlan const>(
            plan_elimination(topology.merged_nodes, topology.lines, topology.root));
    return topology;
}

} // namespace bankwright::solver
