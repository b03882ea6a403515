// Eigen: a dense LDL^T of each matrix, and a sparse one whose order and pattern are found once.
#include "bench/contenders.hpp"

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>

namespace bench {

namespace {

class Assembly {
public:
    explicit Assembly(BatchPlan const& plan) : plan_(plan), row_(rows_by_node(plan)) {}

    // Calls `add(row, column, siemens)` for the lower triangle; fills the right-hand side.
    template <class Add>
    void build(double const* p, Eigen::VectorXd& right, Add add) const {
        right.setZero(size());
        for (std::size_t b = 0; b < plan_.pattern.branches.size(); ++b) {
            int const from = row(plan_.pattern.branches[b].from), to = row(plan_.pattern.branches[b].to);
            double const g = 1.0 / p[plan_.layout.resistance[b]];
            if (from >= 0) add(from, from, g);
            if (to >= 0) add(to, to, g);
            if (from >= 0 && to >= 0) add(std::max(from, to), std::min(from, to), -g);
            if (plan_.layout.emf[b] < 0) continue;
            double const amps = g * p[plan_.layout.emf[b]];
            if (from >= 0) right[from] -= amps;
            if (to >= 0) right[to] += amps;
        }
        right[row(plan_.pattern.loads[0].plus)] -= p[plan_.layout.load[0]];
    }
    void write(Eigen::VectorXd const& left, double* volts) const {
        for (std::size_t n = 0; n < row_.size(); ++n)
            volts[n] = row_[n] < 0 ? 0.0 : left[row_[n]];
    }
    int row(int node) const { return row_[static_cast<std::size_t>(node)]; }
    int size() const { return static_cast<int>(row_.size()) - 1; }
    int parameters() const { return plan_.parameters(); }

private:
    BatchPlan const& plan_;
    std::vector<int> row_;
};

class Dense : public Contender {
public:
    explicit Dense(BatchPlan const& plan) : assembly_(plan), matrix_(assembly_.size(), assembly_.size()) {}
    void solve(double const* parameters, std::size_t count, double* volts) override {
        for (std::size_t i = 0; i < count; ++i) {
            matrix_.setZero();
            assembly_.build(parameters + i * static_cast<std::size_t>(assembly_.parameters()), right_,
                            [&](int row, int column, double g) { matrix_(row, column) += g; });
            ldlt_.compute(matrix_);
            left_ = ldlt_.solve(right_);
            assembly_.write(left_, volts + i * static_cast<std::size_t>(assembly_.size() + 1));
        }
    }

private:
    Assembly assembly_;
    Eigen::MatrixXd matrix_;
    Eigen::LDLT<Eigen::MatrixXd> ldlt_;
    Eigen::VectorXd right_, left_;
};

class Sparse : public Contender {
public:
    explicit Sparse(BatchPlan const& plan) : assembly_(plan), matrix_(assembly_.size(), assembly_.size()) {
        std::vector<double> const ones(static_cast<std::size_t>(plan.parameters()), 1.0);
        std::vector<Eigen::Triplet<double>> entries;
        assembly_.build(ones.data(), right_, [&](int r, int c, double g) { entries.emplace_back(r, c, g); });
        matrix_.setFromTriplets(entries.begin(), entries.end());
        for (auto const& entry : entries) // where each term goes, in the order in which build() calls
            place_.push_back(&matrix_.coeffRef(entry.row(), entry.col()) - matrix_.valuePtr());
        ldlt_.analyzePattern(matrix_);
    }
    void solve(double const* parameters, std::size_t count, double* volts) override {
        for (std::size_t i = 0; i < count; ++i) {
            std::fill_n(matrix_.valuePtr(), matrix_.nonZeros(), 0.0);
            auto place = place_.begin();
            assembly_.build(parameters + i * static_cast<std::size_t>(assembly_.parameters()), right_,
                            [&](int, int, double g) { matrix_.valuePtr()[*place++] += g; });
            ldlt_.factorize(matrix_);
            left_ = ldlt_.solve(right_);
            assembly_.write(left_, volts + i * static_cast<std::size_t>(assembly_.size() + 1));
        }
    }

private:
    Assembly assembly_;
    Eigen::SparseMatrix<double> matrix_;
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> ldlt_;
    std::vector<std::ptrdiff_t> place_;
    Eigen::VectorXd right_, left_;
};

} // namespace

std::unique_ptr<Contender> make_eigen(BatchPlan const& plan, std::string_view name) {
    if (name == "eigen-dense") return std::make_unique<Dense>(plan);
    if (name == "eigen-sparse") return std::make_unique<Sparse>(plan);
    return nullptr;
}

} // namespace bench
