// Bodies of sparse_network.hpp: the one place where Eigen's sparse solver is used.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/missing_amps.hpp"
#include "bankwright/solver/linear/sparse_network.hpp"

#include <utility>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

namespace bankwright::solver {

struct SparseNetwork::Factor {
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> ldlt;
};

BANKWRIGHT_INLINE SparseNetwork::SparseNetwork(int nodes, std::vector<Line> lines, std::vector<double> siemens,
                                               std::vector<int> const& roots)
    : lines_(std::move(lines)), siemens_(std::move(siemens)), row_(as_index(nodes), 0),
      factor_(std::make_unique<Factor>()) {
    for (int root : roots)
        row_[as_index(root)] = -1;
    int rows = 0;
    for (int& row : row_)
        if (row == 0) row = rows++;
    std::vector<Eigen::Triplet<double>> entries;
    for (std::size_t line = 0; line < lines_.size(); ++line) {
        int const a = row_[as_index(lines_[line].from)];
        int const b = row_[as_index(lines_[line].to)];
        double const g = siemens_[line];
        if (a >= 0) entries.emplace_back(a, a, g);
        if (b >= 0) entries.emplace_back(b, b, g);
        if (a >= 0 && b >= 0) entries.emplace_back(a > b ? a : b, a > b ? b : a, -g);
    }
    Eigen::SparseMatrix<double> matrix(rows, rows); // lower triangle
    matrix.setFromTriplets(entries.begin(), entries.end());
    factor_->ldlt.compute(matrix);
}

BANKWRIGHT_INLINE SparseNetwork::~SparseNetwork() = default;
BANKWRIGHT_INLINE SparseNetwork::SparseNetwork(SparseNetwork&&) noexcept = default;
BANKWRIGHT_INLINE SparseNetwork& SparseNetwork::operator=(SparseNetwork&&) noexcept = default;

BANKWRIGHT_INLINE std::vector<double> SparseNetwork::volts_of_injections(std::vector<double> const& node_amps) const {
    Eigen::VectorXd right(factor_->ldlt.rows());
    for (std::size_t n = 0; n < row_.size(); ++n)
        if (row_[n] >= 0) right[row_[n]] = node_amps[n];
    Eigen::VectorXd const left = factor_->ldlt.solve(right);
    std::vector<double> volts(row_.size(), 0.0);
    for (std::size_t n = 0; n < row_.size(); ++n)
        if (row_[n] >= 0) volts[n] = left[row_[n]];
    return volts;
}

BANKWRIGHT_INLINE std::vector<double> SparseNetwork::volts(std::vector<double> const& line_amps) const {
    std::vector<double> volts(row_.size(), 0.0);
    for (int round = 0; round < 3; ++round) { // the first gives the answer, the others refine it
        std::vector<double> const step = volts_of_injections(missing_amps(lines_, siemens_, line_amps, volts));
        for (std::size_t n = 0; n < volts.size(); ++n)
            volts[n] += step[n];
    }
    return volts;
}

} // namespace bankwright::solver
