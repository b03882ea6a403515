// The same question as star_mesh.hpp for networks of many nodes: sparse LDL^T, then refinement in branch form.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/topology.hpp"

#include <memory>
#include <vector>

namespace bankwright::solver {

// The residual of the refinement is summed from branch differences, g (V_j - V_i), not from the assembled matrix, whose
// diagonal is already rounded.
class SparseNetwork {
public:
    SparseNetwork(int nodes, std::vector<Line> lines, std::vector<double> siemens, std::vector<int> const& roots);
    ~SparseNetwork();
    SparseNetwork(SparseNetwork&&) noexcept;
    SparseNetwork& operator=(SparseNetwork&&) noexcept;

    std::vector<double> volts(std::vector<double> const& line_amps) const;
    std::vector<double> volts_of_injections(std::vector<double> const& node_amps) const;

private:
    struct Factor;
    std::vector<Line> lines_;
    std::vector<double> siemens_; // by line
    std::vector<int> row_;        // by node; -1 for a root
    std::unique_ptr<Factor> factor_;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/linear/sparse_network_inl.hpp"
#endif
