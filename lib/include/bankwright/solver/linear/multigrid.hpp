// Roughly, which voltages do given currents make in a large network? Fast and nearly right: what makes the iteration of
// pack_network.hpp short.
//
// Method. Rows that hang together most strongly are made one, in pairs or in pairs of pairs, until few are left. On
// each level a Gauss-Seidel sweep smooths, the coarser level corrects what is smooth, a sweep in the other order keeps
// the whole symmetric; each coarser level is solved by up to two steps of conjugate gradients (a K-cycle), which makes
// the work grow with the number of nodes alone. It asks for no grid: only the conductances say what goes together.
// Pairs of pairs are the quicker half of the time on a pack whose bus-bars are alike; pairs take the same few steps on
// any pack. Y. Notay, Electronic Transactions on Numerical Analysis 37 (2010) 123 [from memory].
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/linear/conductance_rows.hpp"
#include "bankwright/solver/linear/sparse_network.hpp"

#include <memory>
#include <vector>

namespace bankwright::solver {

class Multigrid {
public:
    enum class Groups { pairs, pairs_of_pairs };
    Multigrid(ConductanceRows finest, Groups groups, int few); // `few`: rows that are solved directly

    // Each caller brings one of its own.
    struct Workspace {
        std::vector<double> right, left, slope, second, second_slope; // of one level
    };
    std::vector<Workspace> workspace() const;

    // [V] by row for currents [A] into the rows. Symmetric and positive, nearly linear.
    void solve_roughly(std::vector<double> const& amps, std::vector<double>& volts,
                       std::vector<Workspace>& workspace) const;

    ConductanceRows const& finest() const { return levels_.front().rows; }

private:
    struct Level {
        ConductanceRows rows;
        std::vector<double> ohms; // by row: 1 / (sum of its conductances)
        std::vector<int> group;   // by row: its row on the next level, -1 for none
    };
    void cycle(std::size_t level, std::vector<double> const& amps, std::vector<double>& volts,
               std::vector<Workspace>& workspace) const;
    void correct(std::size_t level, std::vector<Workspace>& workspace) const;
    std::vector<Level> levels_;
    std::unique_ptr<SparseNetwork> coarsest_;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/linear/multigrid_inl.hpp"
#endif
