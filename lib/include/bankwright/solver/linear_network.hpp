// Conductances and source currents in, voltages out, whatever the size: picks the method.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/solver/linear/pack_network.hpp"
#include "bankwright/solver/linear/sparse_network.hpp"
#include "bankwright/solver/linear/star_mesh.hpp"
#include "bankwright/solver/topology.hpp"

#include <variant>
#include <vector>

namespace bankwright::solver {

class LinearNetwork {
public:
    // `siemens` [S] by line of the topology; 0 for loads. Above `star_mesh_limit` merged nodes the sparse factorization
    // serves, above `factor_limit` the iteration for packs. Where that does not converge the sparse one steps in.
    LinearNetwork(Topology const& topology, std::vector<double> siemens, int star_mesh_limit,
                  int factor_limit = 100'000);

    std::size_t nodes() const { return as_index(nodes_); } // merged

    // [V] by merged node for source currents [A] along the lines, roots at 0 V.
    std::vector<double> volts(std::vector<double> const& line_amps) const;

    // The same where six digits are enough, as for what an answer is short of.
    std::vector<double> rough_volts(std::vector<double> const& line_amps) const;

    // [V] by merged node for currents [A] injected at the nodes and taken out at their roots. Of a pack beyond
    // `factor_limit` with an error of about `enough` of it.
    std::vector<double> volts_of_injections(std::vector<double> const& node_amps, double enough = 1e-6) const;

    // 1-norm condition number of the reduced conductance matrix, 1 if it is empty. Exact but for rounding: the inverse
    // has no negative entry, so its norm is its largest row sum, which is one solve with 1 A into every node. Of a pack
    // beyond `factor_limit` to three digits.
    double condition() const;

private:
    using Method = std::variant<StarMesh, SparseNetwork, PackNetwork>;
    Method chosen(Topology const& topology, int star_mesh_limit, int factor_limit) const;
    SparseNetwork factored() const { return SparseNetwork(nodes_, lines_, siemens_, roots_); }
    std::vector<Line> lines_;
    std::vector<double> siemens_;
    std::vector<int> roots_;
    int nodes_;
    Method method_;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/linear_network_inl.hpp"
#endif
