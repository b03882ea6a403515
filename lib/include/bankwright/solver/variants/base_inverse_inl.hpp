// Bodies of base_inverse.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/elimination_plan.hpp"
#include "bankwright/solver/linear/star_mesh.hpp"
#include "bankwright/solver/variants/base_inverse.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace bankwright::solver {

BANKWRIGHT_INLINE BaseInverse::BaseInverse(Circuit const& circuit, Topology const& topology)
    : BaseInverse(circuit.nodes) {
    auto const rows = as_index(stride / lanes);
    auto const diagonal = std::make_shared<LaneRows>(rows);
    auto const z = std::make_shared<LaneRows>(as_index(nodes) * rows);
    auto const between = std::make_shared<LaneRows>(as_index(nodes) * rows);
    std::vector<long double> siemens(topology.lines.size(), 0.0L), amps(topology.lines.size(), 0.0L);
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        int const line = topology.branch_line[b];
        largest = std::max(largest, std::abs(circuit.branches[b].emf));
        if (line < 0) continue;
        siemens[as_index(line)] = 1.0L / static_cast<long double>(circuit.branches[b].resistance);
        amps[as_index(line)] = static_cast<long double>(circuit.branches[b].emf) * siemens[as_index(line)];
    }
    for (std::size_t l = 0; l < circuit.loads.size(); ++l)
        if (auto const* constant = std::get_if<ConstantCurrent>(&circuit.loads[l].law))
            if (topology.load_feed[l] == Feed::port) amps[as_index(topology.load_line[l])] = constant->amperes;
    StarMeshOf<long double> const mesh(plan_of(topology), siemens);

    auto const merged = [&](int node) { return as_index(topology.merged[as_index(node)]); };
    auto const rest = mesh.volts(amps);
    for (int n = 0; n < nodes; ++n) {
        volts.data()[n] = static_cast<double>(rest[merged(n)]);
        largest = std::max(largest, std::abs(volts.data()[n]));
    }
    std::vector<std::vector<long double>> columns;
    for (int m = 0; m < topology.merged_nodes; ++m) {
        std::vector<long double> unit(as_index(topology.merged_nodes), 0.0L);
        unit[as_index(m)] = 1.0L;
        columns.push_back(mesh.volts_of_injections(std::move(unit)));
    }
    for (int a = 0; a < nodes; ++a)
        for (int b = 0; b < nodes; ++b) {
            auto const& column = columns[merged(a)];
            long double const mutual = column[merged(b)];
            z->data()[a * stride + b] = static_cast<double>(mutual);
            if (a == b) diagonal->data()[a] = static_cast<double>(mutual);
            if (topology.island[as_index(a)] == topology.island[as_index(b)])
                between->data()[a * stride + b] =
                    static_cast<double>((column[merged(a)] - mutual) + (columns[merged(b)][merged(b)] - mutual));
        }
    own = diagonal;
    ohms = z;
    across = between;
    // One rounding for each term that is added up on the way to a number, of which no node has more than there are
    // nodes.
    wide_epsilon = 4.0 * topology.merged_nodes * static_cast<double>(std::numeric_limits<long double>::epsilon());
}

BANKWRIGHT_INLINE BaseInverse BaseInverse::answering(int red, int black) const {
    BaseInverse other(nodes);
    other.own = own;
    other.ohms = ohms;
    other.across = across;
    other.wide_epsilon = wide_epsilon;
    for (int n = 0; n < nodes; ++n)
        other.volts.data()[n] = row(ohms, red)[n] - row(ohms, black)[n];
    other.largest = own->data()[red] + own->data()[black]; // no entry of Z is larger than that on its diagonal
    return other;
}

} // namespace bankwright::solver
