// Which voltages do given source currents make in a network of conductances? Star-mesh elimination.
//
// Method. A node k with conductances c_i to its neighbors is replaced by conductances c_i c_j / s between each pair of
// them, s = sum c_i. Nothing is ever subtracted, so every conductance keeps its full relative accuracy however far
// apart the values lie. Sources are carried as currents f along edges, not as sums at nodes: the edge from k to i
// carries c_i (V_k - V_i) + f_i, and eliminating k gives the pair i -> j the source current l_i f_j - l_j f_i with
// l = c / s. An electromotive force e in the edge is f = c e, so the voltages come out as weighted means of e, with an
// error of a few ulps of the largest e: no condition number enters. (Sums at nodes would cancel: c e of a 1 uohm link
// buries that of a 1 Mohm one.)
// Letters. c [S] conductance, f [A] source current along an edge, l share, s [S] sum at the pivot, V [V].
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/linear/elimination_plan.hpp"

#include <memory>
#include <vector>

namespace bankwright::solver {

template <class Real> // double or long double
class StarMeshOf {
public:
    // `siemens` by line: >= 0, and each node that is no root must hang on its root by lines that are > 0.
    StarMeshOf(std::shared_ptr<EliminationPlan const> plan, std::vector<Real> const& siemens);

    // [V] by node for source currents [A] along the lines; roots are 0 V.
    std::vector<Real> volts(std::vector<Real> const& line_amps) const;

    // [V] by node for currents [A] injected at the nodes and taken out at the root.
    std::vector<Real> volts_of_injections(std::vector<Real> node_amps) const;

private:
    std::shared_ptr<EliminationPlan const> plan_;
    std::vector<Real> siemens_; // by slot, as it was when its pivot's turn came
    std::vector<Real> ohms_;    // by pivot: 1 / s
};
using StarMesh = StarMeshOf<double>;

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/linear/star_mesh_inl.hpp"
#endif
