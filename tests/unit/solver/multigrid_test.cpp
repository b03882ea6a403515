#include "bankwright/solver/linear/conductance_rows.hpp"
#include "bankwright/solver/linear/multigrid.hpp"
#include "bankwright/solver/topology.hpp"
#include "support/cell_packs.hpp"

#include <cstddef>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

// Steps of conjugate gradients with the multigrid for one current from corner to corner, until the error's energy is
// down by sixteen decades. Written once more here, without the library's safeguards.
int steps(int side, Multigrid::Groups groups, int few) {
    random_circuits::Dice dice(7);
    Circuit const pack = cell_packs::drawn(side, side, dice);
    Topology const flat = topology(pack);
    std::vector<double> siemens;
    for (Branch const& branch : pack.branches)
        siemens.push_back(1.0 / branch.resistance);
    siemens.resize(flat.lines.size(), 0.0); // the load carries its current whatever its voltage
    std::vector<int> row(static_cast<std::size_t>(flat.merged_nodes));
    int rows = 0;
    for (std::size_t n = 0; n < row.size(); ++n)
        row[n] = static_cast<int>(n) == flat.root.front() ? -1 : rows++;
    Multigrid const multigrid(conductance_rows(rows, row, flat.lines, siemens), groups, few);
    auto workspace = multigrid.workspace();
    auto const count = static_cast<std::size_t>(rows);
    auto const product = [&](std::vector<double> const& a, std::vector<double> const& b) {
        double sum = 0.0;
        for (std::size_t i = 0; i < count; ++i)
            sum += a[i] * b[i];
        return sum;
    };
    std::vector<double> left(count, 0.0), rough(count), along(count, 0.0), away(count), before(count, 0.0);
    left.back() = 1.0; // [A]
    double first = 0.0, last = 1.0;
    for (int step = 0; step < 100; ++step) {
        multigrid.solve_roughly(left, rough, workspace);
        double const energy = product(left, rough);
        if (step == 0) first = energy;
        if (energy <= 1e-16 * first) return step;
        double turned = 0.0; // not quite linear: against the change of the residual
        for (std::size_t i = 0; i < count; ++i)
            turned += (left[i] - before[i]) * rough[i];
        for (std::size_t i = 0; i < count; ++i)
            along[i] = rough[i] + (step == 0 ? 0.0 : turned / last) * along[i];
        leaving_amps(multigrid.finest(), along, away);
        double const length = product(along, left) / product(along, away);
        before = left;
        for (std::size_t i = 0; i < count; ++i)
            left[i] -= length * away[i];
        last = energy;
    }
    return 100;
}

} // namespace

// What multigrid is for (Trottenberg, Oosterlee, Schueller, Multigrid, 2001, from memory): the work for a digit does
// not depend on the size.
TEST_CASE("a multigrid takes about as many steps for a large pack as for a small one") {
    int const small = steps(16, Multigrid::Groups::pairs_of_pairs, 30);
    int const large = steps(64, Multigrid::Groups::pairs_of_pairs, 30);
    MESSAGE("fours: ", small, " and ", large, " steps for 16 times the cells");
    CHECK(small > 2); // else it was solved directly, with all that fills in
    CHECK(large <= 1.4 * small);
    CHECK(large <= 32);
}

TEST_CASE("groups of two are steadier, and do not depend on the size either") {
    int const small = steps(16, Multigrid::Groups::pairs, 30);
    int const large = steps(64, Multigrid::Groups::pairs, 30);
    MESSAGE("pairs: ", small, " and ", large, " steps for 16 times the cells");
    CHECK(small > 2);
    CHECK(large <= 1.4 * small);
    CHECK(large <= 15);
}
