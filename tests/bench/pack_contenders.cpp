// Packs of very many cells solved by us and by general-purpose sparse libraries: who has a matrix gets it ready made.
#include "bankwright/solver/linear_network.hpp"
#include "bankwright/solver/solve.hpp"
#include "bench/thread_clock.hpp"
#include "support/cell_packs.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

#include <Eigen/SparseCholesky>

#ifdef BENCH_HAS_KLU
#include <cholmod.h>
#include <klu.h>
#endif

using namespace bankwright::solver;
using bench::processor_seconds;

namespace {

struct Pack {
    Topology topology;
    std::vector<double> siemens, amps; // by line
    Eigen::SparseMatrix<double> lower; // without the reference, node 0
    Eigen::VectorXd right;
};

std::size_t at(int i) { return static_cast<std::size_t>(i); }

void assemble(Pack& pack) {
    int const rows = pack.topology.merged_nodes - 1;
    std::vector<Eigen::Triplet<double>> entries;
    pack.right = Eigen::VectorXd::Zero(rows);
    for (std::size_t l = 0; l < pack.siemens.size(); ++l) {
        int const from = pack.topology.lines[l].from - 1, to = pack.topology.lines[l].to - 1;
        double const g = pack.siemens[l];
        if (from >= 0) pack.right[from] -= pack.amps[l];
        if (to >= 0) pack.right[to] += pack.amps[l];
        if (g == 0.0) continue;
        if (from >= 0) entries.emplace_back(from, from, g);
        if (to >= 0) entries.emplace_back(to, to, g);
        if (from >= 0 && to >= 0) entries.emplace_back(std::max(from, to), std::min(from, to), -g);
    }
    pack.lower.resize(rows, rows);
    pack.lower.setFromTriplets(entries.begin(), entries.end());
}

void with_reference(double const* left, Pack const& pack, double* volts) {
    volts[0] = 0.0;
    std::copy_n(left, pack.right.size(), volts + 1);
}

void by_eigen(Pack const& pack, double* volts) {
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> ldlt(pack.lower);
    Eigen::VectorXd const left = ldlt.solve(pack.right);
    with_reference(left.data(), pack, volts);
}

#ifdef BENCH_HAS_KLU
void by_cholmod(Pack const& pack, double* volts) {
    cholmod_common common;
    cholmod_start(&common);
    common.supernodal = CHOLMOD_SUPERNODAL;
    common.nmethods = 1;
    common.method[0].ordering = CHOLMOD_AMD;
    common.postorder = 1;
    cholmod_sparse matrix{};
    matrix.nrow = matrix.ncol = static_cast<std::size_t>(pack.lower.rows());
    matrix.nzmax = static_cast<std::size_t>(pack.lower.nonZeros());
    matrix.p = const_cast<int*>(pack.lower.outerIndexPtr());
    matrix.i = const_cast<int*>(pack.lower.innerIndexPtr());
    matrix.x = const_cast<double*>(pack.lower.valuePtr());
    matrix.stype = -1;
    matrix.itype = CHOLMOD_INT;
    matrix.xtype = CHOLMOD_REAL;
    matrix.dtype = CHOLMOD_DOUBLE;
    matrix.sorted = matrix.packed = 1;
    cholmod_dense right{};
    right.nrow = right.nzmax = right.d = matrix.nrow;
    right.ncol = 1;
    right.x = const_cast<double*>(pack.right.data());
    right.xtype = CHOLMOD_REAL;
    right.dtype = CHOLMOD_DOUBLE;
    cholmod_factor* factor = cholmod_analyze(&matrix, &common);
    cholmod_factorize(&matrix, factor, &common);
    cholmod_dense* left = cholmod_solve(CHOLMOD_A, factor, &right, &common);
    with_reference(static_cast<double const*>(left->x), pack, volts);
    cholmod_free_dense(&left, &common);
    cholmod_free_factor(&factor, &common);
    cholmod_finish(&common);
}

void by_klu(Pack const& pack, Eigen::SparseMatrix<double>& whole, double* volts) {
    klu_common common;
    klu_defaults(&common);
    int const rows = static_cast<int>(whole.rows());
    klu_symbolic* symbolic = klu_analyze(rows, whole.outerIndexPtr(), whole.innerIndexPtr(), &common);
    klu_numeric* numeric =
        klu_factor(whole.outerIndexPtr(), whole.innerIndexPtr(), whole.valuePtr(), symbolic, &common);
    Eigen::VectorXd left = pack.right;
    klu_solve(symbolic, numeric, rows, 1, left.data(), &common);
    klu_free_numeric(&numeric, &common);
    klu_free_symbolic(&symbolic, &common);
    with_reference(left.data(), pack, volts);
}
#endif

} // namespace

extern "C" {

Pack* pack_open(int series, int parallel, unsigned seed) {
    random_circuits::Dice dice(seed);
    Circuit const circuit = cell_packs::drawn(series, parallel, dice);
    auto* pack = new Pack{topology(circuit), {}, {}, {}, {}};
    for (Branch const& b : circuit.branches) {
        pack->siemens.push_back(1.0 / b.resistance);
        pack->amps.push_back(b.emf / b.resistance);
    }
    pack->siemens.push_back(0.0);
    pack->amps.push_back(std::get<ConstantCurrent>(circuit.loads[0].law).amperes);
    return pack;
}

void pack_close(Pack* pack) { delete pack; }
int pack_nodes(Pack const* pack) { return pack->topology.merged_nodes; }

// Lines with their conductance, source current, for whoever writes a netlist.
int pack_lines(Pack const* pack, int* from, int* to, double* siemens, double* amps) {
    if (from)
        for (std::size_t l = 0; l < pack->siemens.size(); ++l) {
            from[l] = pack->topology.lines[l].from, to[l] = pack->topology.lines[l].to;
            siemens[l] = pack->siemens[l], amps[l] = pack->amps[l];
        }
    return static_cast<int>(pack->siemens.size());
}

int pack_has(char const* name) {
    std::string_view const who = name;
#ifdef BENCH_HAS_KLU
    if (who == "cholmod" || who == "klu") return 1;
#endif
    return who == "ours" || who == "ours iterated" || who == "eigen";
}

// Seconds of this thread from the lines, or from the ready matrix, to the volts; negative for a name that is not known.
// "reference" is a factorization refined twice in extended precision.
double pack_run(Pack* pack, char const* name, double* volts) {
    std::string_view const who = name;
    bool const lines = who == "ours" || who == "ours iterated" || who == "reference";
    if (!lines && pack->lower.rows() == 0) assemble(*pack);
    Eigen::SparseMatrix<double> whole;
    if (who == "klu") whole = pack->lower.selfadjointView<Eigen::Lower>();
    double const begin = processor_seconds();
    if (lines) {
        SolveOptions const usual;
        int const limit = who == "ours" ? usual.factor_limit : who == "reference" ? pack->topology.merged_nodes : 0;
        auto const found =
            LinearNetwork(pack->topology, pack->siemens, who == "ours" ? usual.star_mesh_limit : 0, limit)
                .volts(pack->amps);
        std::copy(found.begin(), found.end(), volts);
    } else if (who == "eigen") {
        by_eigen(*pack, volts);
#ifdef BENCH_HAS_KLU
    } else if (who == "cholmod") {
        by_cholmod(*pack, volts);
    } else if (who == "klu") {
        by_klu(*pack, whole, volts);
#endif
    } else {
        return -1.0;
    }
    return processor_seconds() - begin;
}

// Seconds of the sparse factorization with its solve, and of each refinement after it.
void pack_refinement(Pack const* pack, double* factor_and_solve, double* refinement) {
    double const begin = processor_seconds();
    SparseNetwork const network(pack->topology.merged_nodes, pack->topology.lines, pack->siemens, pack->topology.root);
    network.volts_of_injections(std::vector<double>(at(pack->topology.merged_nodes), 1.0));
    double const middle = processor_seconds();
    network.volts(pack->amps); // a solve and two more, each with the sum of what is left over
    *factor_and_solve = middle - begin;
    *refinement = (processor_seconds() - middle) / 3.0;
}
}
