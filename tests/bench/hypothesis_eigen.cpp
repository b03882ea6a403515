// Theirs, for hypothesis_goals.py: Eigen's dense LDL^T of each hypothesis' matrix, assembled anew. In a library of its
// own, compiled for this very processor: Eigen may use all of it.
#include "bench/hypotheses.hpp"
#include "bench/thread_clock.hpp"

#include <string_view>

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>

namespace {

constexpr int unknowns = 28; // 3s4p, known when this is compiled
using Matrix = Eigen::Matrix<double, unknowns, unknowns>;
using Vector = Eigen::Matrix<double, unknowns, 1>;

struct Theirs {
    bench::Hypotheses hypotheses;
    std::vector<double> rows = std::vector<double>(hypotheses.circuits.size() * (unknowns + 1));

    // Calls `add(row, column, siemens)` for the lower triangle.
    template <class Right, class Add>
    static void assemble(bankwright::solver::Circuit const& c, Right& right, Add add) {
        auto const row = [&](int node) { return node == c.reference ? -1 : node < c.reference ? node : node - 1; };
        right.setZero();
        for (auto const& b : c.branches) {
            int const from = row(b.from), to = row(b.to);
            double const g = 1.0 / b.resistance;
            if (from >= 0) add(from, from, g), right[from] -= g * b.emf;
            if (to >= 0) add(to, to, g), right[to] += g * b.emf;
            if (from >= 0 && to >= 0) add(from > to ? from : to, from > to ? to : from, -g);
        }
        auto const& load = c.loads[0];
        double const amps = std::get<bankwright::solver::ConstantCurrent>(load.law).amperes;
        if (row(load.plus) >= 0) right[row(load.plus)] -= amps;
        if (row(load.minus) >= 0) right[row(load.minus)] += amps;
    }

    template <class Left>
    void write(std::size_t i, Left const& left) {
        int const reference = hypotheses.base.reference;
        double* const out = rows.data() + i * (unknowns + 1);
        for (int n = 0; n <= unknowns; ++n)
            out[n] = n == reference ? 0.0 : left[n < reference ? n : n - 1];
    }

    void dense() {
        Matrix matrix;
        Vector right;
        Eigen::LDLT<Matrix> ldlt;
        for (std::size_t i = 0; i < hypotheses.circuits.size(); ++i) {
            matrix.setZero();
            assemble(hypotheses.circuits[i], right, [&](int r, int c, double g) { matrix(r, c) += g; });
            ldlt.compute(matrix);
            write(i, Vector(ldlt.solve(right)));
        }
    }

    void sparse() {
        Eigen::SparseMatrix<double> matrix(unknowns, unknowns);
        Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> ldlt;
        Vector right;
        std::vector<Eigen::Triplet<double>> entries;
        for (std::size_t i = 0; i < hypotheses.circuits.size(); ++i) {
            entries.clear();
            assemble(hypotheses.circuits[i], right, [&](int r, int c, double g) { entries.emplace_back(r, c, g); });
            matrix.setFromTriplets(entries.begin(), entries.end());
            ldlt.compute(matrix);
            write(i, Eigen::VectorXd(ldlt.solve(right)));
        }
    }
};

} // namespace

extern "C" {

Theirs* eigen_open() { return new Theirs; }
double const* eigen_rows(Theirs const* theirs) { return theirs->rows.data(); }

double eigen_run(Theirs* theirs, char const* name, int repeats) {
    double const begin = bench::processor_seconds();
    for (int i = 0; i < repeats; ++i)
        std::string_view(name) == "sparse" ? theirs->sparse() : theirs->dense();
    return bench::processor_seconds() - begin;
}
}
