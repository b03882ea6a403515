// The same question as star_mesh.hpp for packs of very many cells: conjugate gradients on multigrid.hpp, refined in
// branch form until the answer stands still.
//
// Method. Each leg solves for what the voltages so far leave over, summed line by line in extended precision from
// branch differences, g (V_j - V_i); the voltages of two legs are right to the last digits that a double holds. A leg
// ends when the energy of its error, as the multigrid sees it, has fallen far enough. An answer is given only when the
// last leg changed next to nothing: without one the caller takes the sparse factorization.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/linear/multigrid.hpp"
#include "bankwright/solver/topology.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace bankwright::solver {

class PackNetwork {
public:
    // `siemens` by line: >= 0, and each node that is no root must hang on its root by lines that are > 0. `few`: rows
    // of which no coarser level is made.
    PackNetwork(int nodes, std::vector<Line> lines, std::vector<double> siemens, std::vector<int> const& roots,
                int few = 500);

    // [V] by node for source currents [A] along the lines; roots are 0 V. None: not converged.
    std::optional<std::vector<double>> volts(std::vector<double> const& line_amps) const;

    // The same to about `a_leg` of the largest.
    std::optional<std::vector<double>> rough_volts(std::vector<double> const& line_amps) const;

    // [V] by node for currents [A] injected at the nodes, until the error's energy norm is down to `enough`.
    std::optional<std::vector<double>> volts_of_injections(std::vector<double> const& node_amps, double enough) const;

private:
    static constexpr double a_leg = 1e-7;
    static bool leg(Multigrid const& multigrid, std::vector<double> amps, std::vector<double>& volts, double enough);
    std::optional<std::vector<double>> correction(std::vector<double> const& line_amps,
                                                  std::vector<double> const& volts) const;
    std::vector<Line> lines_;
    std::vector<double> siemens_; // by line
    std::vector<int> row_;        // by node; -1 for a root
    int few_;
    // The one in use: it is changed for a steadier one at most once, so one thread at a time may ask.
    mutable std::unique_ptr<Multigrid const> multigrid_;
    mutable bool steadier_ = false;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/linear/pack_network_inl.hpp"
#endif
