// Bodies of join_currents.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/union_find.hpp"
#include "bankwright/solver/currents/forest_currents.hpp"
#include "bankwright/solver/join_currents.hpp"
#include "bankwright/solver/linear/sparse_network.hpp"
#include "bankwright/solver/linear/star_mesh.hpp"

#include <memory>

namespace bankwright::solver {

BANKWRIGHT_INLINE std::vector<double> join_currents(Circuit const& circuit, std::vector<double> leaving,
                                                    int star_mesh_limit) {
    std::vector<Line> joins;
    for (Join const& join : circuit.joins)
        joins.push_back({join.from, join.to});
    ForestCurrents found = forest_currents(circuit.nodes, joins, leaving);

    // What is left are rings: potentials as if every join had 1 ohm.
    std::vector<Line> lines;
    UnionFind rings(circuit.nodes);
    for (std::size_t j = 0; j < joins.size(); ++j) {
        if (found.settled[j]) continue;
        lines.push_back(joins[j]);
        rings.unite(joins[j].from, joins[j].to);
    }
    if (lines.empty()) return found.amps;
    std::vector<int> roots;
    for (int n = 0; n < circuit.nodes; ++n)
        if (rings.find(n) == n) roots.push_back(n);
    for (double& amps : leaving)
        amps = -amps;
    std::vector<double> const ones(lines.size(), 1.0);
    auto const volts =
        circuit.nodes <= star_mesh_limit
            ? StarMesh(std::make_shared<EliminationPlan const>(plan_elimination(circuit.nodes, lines, roots)), ones)
                  .volts_of_injections(leaving)
            : SparseNetwork(circuit.nodes, lines, ones, roots).volts_of_injections(leaving);
    for (std::size_t j = 0; j < joins.size(); ++j)
        if (!found.settled[j]) found.amps[j] = volts[as_index(joins[j].from)] - volts[as_index(joins[j].to)];
    return found.amps;
}

} // namespace bankwright::solver
