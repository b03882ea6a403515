// Bodies of pack_network.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/missing_amps.hpp"
#include "bankwright/solver/linear/pack_network.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bankwright::solver {

namespace internal {

inline std::vector<int> rows_beside_roots(int nodes, std::vector<int> const& roots) {
    std::vector<int> row(as_index(nodes), 0);
    for (int root : roots)
        row[as_index(root)] = -1;
    int rows = 0;
    for (int& r : row)
        if (r == 0) r = rows++;
    return row;
}

} // namespace internal

BANKWRIGHT_INLINE PackNetwork::PackNetwork(int nodes, std::vector<Line> lines, std::vector<double> siemens,
                                           std::vector<int> const& roots, int few)
    : lines_(std::move(lines)), siemens_(std::move(siemens)), row_(internal::rows_beside_roots(nodes, roots)),
      few_(few), multigrid_(std::make_unique<Multigrid>(
                     conductance_rows(nodes - static_cast<int>(roots.size()), row_, lines_, siemens_),
                     Multigrid::Groups::pairs_of_pairs, few)) {}

// Flexible conjugate gradients; `volts` are added to. False: the error falls too slowly.
BANKWRIGHT_INLINE bool PackNetwork::leg(Multigrid const& multigrid, std::vector<double> amps,
                                        std::vector<double>& volts, double enough) {
    using internal::grouping::dot;
    constexpr double pace = 0.75; // of the error is left after a step, at the worst, once some steps are done
    constexpr int some = 15, most = 100;
    std::size_t const count = amps.size();
    std::vector<double> along(count), away(count), rough(count);
    auto workspace = multigrid.workspace();
    double first = 0.0, last = 0.0, length = 0.0;
    for (int step = 0; step < most; ++step) {
        multigrid.solve_roughly(amps, rough, workspace);
        double const energy = dot(amps, rough);
        if (step == 0) first = energy;
        if (!std::isfinite(energy)) return false;
        if (energy <= enough * enough * first) return true;
        if (step >= some && energy > std::pow(pace, 2 * step) * first) return false;
        // The multigrid is not quite linear: the new direction is held against the last change, not the last residual.
        double const share = step == 0 ? 0.0 : -length * dot(away, rough) / last;
        for (std::size_t r = 0; r < count; ++r)
            along[r] = rough[r] + share * along[r];
        leaving_amps(multigrid.finest(), along, away);
        double const slope = dot(along, away);
        if (!(slope > 0.0)) return false;
        length = dot(along, amps) / slope;
        for (std::size_t r = 0; r < count; ++r) {
            volts[r] += length * along[r];
            amps[r] -= length * away[r];
        }
        last = energy;
    }
    return false;
}

BANKWRIGHT_INLINE std::optional<std::vector<double>>
PackNetwork::volts_of_injections(std::vector<double> const& node_amps, double enough) const {
    std::vector<double> amps(multigrid_->finest().ground.size()), found(amps.size(), 0.0);
    for (std::size_t n = 0; n < row_.size(); ++n)
        if (row_[n] >= 0) amps[as_index(row_[n])] = node_amps[n];
    while (!leg(*multigrid_, amps, found, enough)) {
        if (steadier_) return std::nullopt;
        multigrid_ = std::make_unique<Multigrid>(multigrid_->finest(), Multigrid::Groups::pairs, few_);
        steadier_ = true;
        std::fill(found.begin(), found.end(), 0.0);
    }
    std::vector<double> volts(row_.size(), 0.0);
    for (std::size_t n = 0; n < row_.size(); ++n)
        if (row_[n] >= 0) volts[n] = found[as_index(row_[n])];
    return volts;
}

BANKWRIGHT_INLINE std::optional<std::vector<double>> PackNetwork::correction(std::vector<double> const& line_amps,
                                                                             std::vector<double> const& volts) const {
    return volts_of_injections(missing_amps(lines_, siemens_, line_amps, volts), a_leg);
}

BANKWRIGHT_INLINE std::optional<std::vector<double>> PackNetwork::volts(std::vector<double> const& line_amps) const {
    constexpr int most = 6; // legs; two are usual
    constexpr double still = 1e-6;
    std::vector<double> volts(row_.size(), 0.0);
    for (int legs = 0; legs < most; ++legs) {
        auto const step = correction(line_amps, volts);
        if (!step) return std::nullopt;
        double change = 0.0, largest = 0.0;
        for (std::size_t n = 0; n < volts.size(); ++n) {
            volts[n] += (*step)[n];
            change = std::max(change, std::abs((*step)[n]));
            largest = std::max(largest, std::abs(volts[n]));
        }
        if (change <= still * largest) return volts; // what is left is a leg's share of that
    }
    return std::nullopt;
}

BANKWRIGHT_INLINE std::optional<std::vector<double>>
PackNetwork::rough_volts(std::vector<double> const& line_amps) const {
    return correction(line_amps, std::vector<double>(row_.size(), 0.0));
}

} // namespace bankwright::solver
