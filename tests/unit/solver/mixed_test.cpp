#include "bankwright/solver/mixed.hpp"
#include "bankwright/solver/solve.hpp"
#include "bankwright/solver/topology.hpp"
#include "bankwright/solver/validate.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using random_circuits::Dice;

namespace {

// Largest difference from solve(), relative to the circuit's largest voltage or emf; the statuses must be the same, and
// so many must have been solved side by side.
double worst_of(std::vector<Circuit> const& circuits, InstructionSet set, std::size_t side_by_side) {
    int width = 1;
    for (auto const& c : circuits)
        width = std::max(width, c.nodes);
    std::vector<double> volts(circuits.size() * static_cast<std::size_t>(width));
    std::vector<Status> statuses(circuits.size());
    CHECK(solve_mixed(circuits.data(), circuits.size(), width, volts.data(), statuses.data(), set) == side_by_side);
    double worst = 0.0;
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        Solution const alone = solve(circuits[i]);
        REQUIRE(statuses[i] == alone.status);
        double size = 1.0, off = 0.0;
        for (auto const& b : circuits[i].branches)
            size = std::max(size, std::abs(b.emf));
        for (std::size_t n = 0; n < alone.volts.size(); ++n) {
            double const v = volts[i * static_cast<std::size_t>(width) + n];
            REQUIRE(std::isfinite(v));
            size = std::max(size, std::abs(alone.volts[n]));
            off = std::max(off, std::abs(v - alone.volts[n]));
        }
        if (alone.volts.empty()) CHECK(std::isnan(volts[i * static_cast<std::size_t>(width)]));
        worst = std::max(worst, off / size);
    }
    return worst;
}

std::vector<Circuit> random_ones(int count, random_circuits::Recipe const& recipe) {
    Dice dice(3);
    std::vector<Circuit> circuits;
    for (int i = 0; i < count; ++i)
        circuits.push_back(random_circuits::circuit(dice, recipe));
    return circuits;
}

} // namespace

// Injections are summed at the nodes, so five decades of conductance cost as many digits.
TEST_CASE("circuits of every size and wiring side by side are solved as each one alone") {
    auto const circuits = random_ones(203, {.max_nodes = 20, .join_share = 0.0, .connected = true});
    for (auto set : {InstructionSet::portable, InstructionSet::avx2, InstructionSet::avx512})
        CHECK(worst_of(circuits, set, circuits.size()) < 1e-10);
}

TEST_CASE("joins, islands, loads of every law and numbers that are none go their own way beside the others") {
    auto circuits = random_ones(120, {.max_nodes = 9, .join_share = 0.05});
    Dice dice(5);
    for (std::size_t i = 0; i < circuits.size(); i += 7)
        random_circuits::add_loads(dice, circuits[i], 2);
    for (std::size_t i = 3; i < circuits.size(); i += 31)
        if (!circuits[i].branches.empty()) circuits[i].branches[0].resistance = -1.0;
    std::size_t plain = 0; // in one piece, of branches and given currents alone
    for (auto const& c : circuits) {
        auto const t = topology(c);
        plain += is_valid(c) && t.root.size() == 1 && c.joins.empty() &&
                 std::all_of(c.loads.begin(), c.loads.end(),
                             [](Load const& l) { return std::holds_alternative<ConstantCurrent>(l.law); });
    }
    CHECK(plain > 10);
    CHECK(worst_of(circuits, widest_here(), plain) < 1e-10);
}

TEST_CASE("a row that is too short throws") {
    Circuit const c{
        .nodes = 3, .branches = {{0, 1, 1.0, 1.0}, {1, 2, 1.0, 0.0}}, .joins = {}, .loads = {}, .reference = 0};
    double volts[2];
    Status status;
    CHECK_THROWS_AS(solve_mixed(&c, 1, 2, volts, &status), std::invalid_argument);
}
