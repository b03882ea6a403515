// Bodies of sparse_network.hpp: the one place where Eigen's sparse solver is used.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/missing_amps.hpp"
#include "bankwright/solver/linear/sparse_network.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

namespace bankwright::solver {

struct SparseNetwork::Factor {
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> ldlt;
};

namespace internal {

// The lower triangle of the conductance matrix, each column's diagonal first; `row` by node, -1 for a root. Eigen would
// make it from triplets in four times the time.
inline Eigen::SparseMatrix<double> conductances(std::vector<Line> const& lines, std::vector<double> const& siemens,
                                                std::vector<int> const& row, int rows) {
    std::vector<int> begin(as_index(rows) + 1, 0);
    std::vector<double> diagonal(as_index(rows), 0.0);
    auto const ends = [&](Line const& line) { return std::minmax(row[as_index(line.from)], row[as_index(line.to)]); };
    for (auto const& line : lines)
        if (auto const [low, high] = ends(line); low >= 0) ++begin[as_index(low)];
    int total = 0;
    for (int& entry : begin)
        entry = std::exchange(total, total + entry + 1); // and the diagonal
    std::vector<int> fill(begin.begin(), begin.end() - 1), inner(as_index(begin.back()));
    std::vector<double> values(inner.size());
    for (int r = 0; r < rows; ++r)
        inner[as_index(fill[as_index(r)]++)] = r;
    for (std::size_t l = 0; l < lines.size(); ++l) {
        auto const [low, high] = ends(lines[l]);
        if (low >= 0) diagonal[as_index(low)] += siemens[l];
        if (high >= 0) diagonal[as_index(high)] += siemens[l];
        if (low < 0) continue;
        auto at = as_index(fill[as_index(low)]++);
        for (; inner[at - 1] > high; --at) { // in the order of rows, on which the ordering builds; columns are short
            inner[at] = inner[at - 1];
            values[at] = values[at - 1];
        }
        inner[at] = high;
        values[at] = -siemens[l];
    }
    std::size_t kept = 0; // lines side by side are one entry
    for (std::size_t r = 0; r < diagonal.size(); ++r) {
        auto const from = as_index(begin[r]), to = as_index(begin[r + 1]);
        values[from] = diagonal[r];
        begin[r] = static_cast<int>(kept);
        for (auto k = from; k < to; ++k) {
            if (k > from && inner[kept - 1] == inner[k]) {
                values[kept - 1] += values[k];
                continue;
            }
            inner[kept] = inner[k];
            values[kept++] = values[k];
        }
    }
    begin.back() = static_cast<int>(kept);
    return Eigen::Map<Eigen::SparseMatrix<double> const>(rows, rows, begin.back(), begin.data(), inner.data(),
                                                         values.data());
}

} // namespace internal

BANKWRIGHT_INLINE SparseNetwork::SparseNetwork(int nodes, std::vector<Line> lines, std::vector<double> siemens,
                                               std::vector<int> const& roots)
    : lines_(std::move(lines)), siemens_(std::move(siemens)), row_(as_index(nodes), 0),
      factor_(std::make_unique<Factor>()) {
    for (int root : roots)
        row_[as_index(root)] = -1;
    int rows = 0;
    for (int& row : row_)
        if (row == 0) row = rows++;
    factor_->ldlt.compute(internal::conductances(lines_, siemens_, row_, rows));
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
    constexpr double still = 1e-9; // of the largest voltage: the next round would change that share of it, 1e-18
    std::vector<double> volts(row_.size(), 0.0);
    for (int round = 0; round < 3; ++round) { // the first gives the answer, the others refine it
        std::vector<double> const step = volts_of_injections(missing_amps(lines_, siemens_, line_amps, volts));
        double change = 0.0, largest = 0.0;
        for (std::size_t n = 0; n < volts.size(); ++n) {
            volts[n] += step[n];
            change = std::max(change, std::abs(step[n]));
            largest = std::max(largest, std::abs(volts[n]));
        }
        if (change <= still * largest) break;
    }
    return volts;
}

} // namespace bankwright::solver
