// Meshes with constant-power loads, against an iteration that knows no more than the network's resistances: every load
// draws P / V, from the open circuit on. Where the loads share one node each pulls the others down, so the currents
// only rise: to the smallest answer, which is that of the highest voltages, or without end if there is none.
#include "bankwright/solver/solve.hpp"
#include "reference/slow_solver.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using random_circuits::Dice;

namespace {

// The circuit as its loads see it: V = open - ohms I.
struct Mesh {
    Circuit circuit;
    std::vector<double> open;              // [V] by load
    std::vector<std::vector<double>> ohms; // [ohm]
    std::vector<double> watts;             // [W]

    std::size_t size() const { return watts.size(); }

    std::vector<double> volts(std::vector<double> const& amps) const {
        std::vector<double> v = open;
        for (std::size_t k = 0; k < v.size(); ++k)
            for (std::size_t j = 0; j < v.size(); ++j)
                v[k] -= ohms[k][j] * amps[j];
        return v;
    }
};

std::size_t at(int i) { return static_cast<std::size_t>(i); }

// A connected circuit, its resistances over five decades, with loads from some of its nodes to one: in quadruple
// precision what they see at rest, and what one ampere of each does to all. Nothing if a load would see no voltage.
std::optional<Mesh> draw_mesh(Dice& dice) {
    Mesh mesh;
    mesh.circuit = random_circuits::circuit(dice, {.max_nodes = 7, .max_loads = 1, .connected = true});
    int const minus = dice.below(mesh.circuit.nodes), count = 1 + dice.below(3);
    Circuit probed = mesh.circuit;
    auto const rest = slow::solve(probed).volts;
    std::vector<int> plus;
    for (int k = 0; k < count; ++k) {
        plus.push_back(dice.below(mesh.circuit.nodes));
        mesh.open.push_back(static_cast<double>(rest[at(plus.back())] - rest[at(minus)]));
        if (mesh.open.back() < 0.1) return std::nullopt;
    }
    for (int k : plus) {
        probed.loads.push_back({k, minus, ConstantCurrent{1.0}});
        auto const drawn = slow::solve(probed).volts;
        probed.loads.pop_back();
        mesh.ohms.emplace_back();
        for (int j : plus)
            mesh.ohms.back().push_back(
                static_cast<double>(rest[at(j)] - rest[at(minus)] - drawn[at(j)] + drawn[at(minus)]));
        if (!(mesh.ohms.back()[mesh.ohms.size() - 1] > 1e-6)) return std::nullopt; // on a source without resistance
        mesh.circuit.loads.push_back({k, minus, ConstantPower{}});
    }
    return mesh;
}

enum class Made { at_random, to_work, to_fail };

// to_work: an answer is chosen first, of either branch. to_fail: one load asks for more than it could have alone.
void power(Dice& dice, Mesh& mesh, Made made) {
    std::size_t const count = mesh.open.size();
    auto const most = [&](std::size_t k) { return mesh.open[k] * mesh.open[k] / (4.0 * mesh.ohms[k][k]); };
    mesh.watts.clear();
    for (std::size_t k = 0; k < count; ++k)
        mesh.watts.push_back(most(k) * dice.log_between(1e-3, 1.0));
    if (made == Made::to_fail) mesh.watts[0] = most(0) * (1.0 + dice.log_between(1e-7, 1e2));
    if (made == Made::to_work) {
        std::vector<double> amps(count);
        for (std::size_t k = 0; k < count; ++k)
            amps[k] = dice.unit() * mesh.open[k] / mesh.ohms[k][k];
        for (auto volts = mesh.volts(amps); *std::min_element(volts.begin(), volts.end()) <= 0.0;
             volts = mesh.volts(amps))
            for (double& a : amps)
                a *= 0.7;
        auto const volts = mesh.volts(amps);
        for (std::size_t k = 0; k < count; ++k)
            mesh.watts[k] = std::max(1e-12, volts[k] * amps[k]);
    }
    for (std::size_t k = 0; k < count; ++k)
        mesh.circuit.loads[mesh.circuit.loads.size() - count + k].law = ConstantPower{mesh.watts[k]};
}

enum class Verdict { works, fails, unknown };

// Currents that give every load its power or more are above the smallest answer: there is one.
bool enough(Mesh const& mesh, double share, std::vector<double> const& amps) {
    auto const volts = mesh.volts(amps);
    for (std::size_t k = 0; k < amps.size(); ++k)
        if (volts[k] <= 0.0 || volts[k] * amps[k] < share * mesh.watts[k]) return false;
    return true;
}

// To the end, which leaves the answer in `amps`, or only until it is known whether there is one. Near the fold the
// iteration creeps: a gap of g takes pi / sqrt(g) steps to fail, and more to end, but not to be overtaken by currents
// that are enough.
Verdict iterate(Mesh const& mesh, double share, std::vector<double>& amps, bool to_the_end) {
    amps.assign(mesh.size(), 0.0);
    std::vector<double> next(mesh.size()), ahead(mesh.size());
    for (int i = 1; i < 20000; ++i) {
        auto const volts = mesh.volts(amps);
        double rise = 0.0;
        for (std::size_t k = 0; k < amps.size(); ++k) {
            if (volts[k] <= 0.0) return Verdict::fails;
            next[k] = share * mesh.watts[k] / volts[k];
            rise = std::max(rise, (next[k] - amps[k]) / next[k]);
        }
        if (rise <= 1e-14) return Verdict::works;
        if (!to_the_end && i % 64 == 0)
            for (double far = 2.0; far < 1e5; far *= 2.0) {
                for (std::size_t k = 0; k < amps.size(); ++k)
                    ahead[k] = amps[k] + far * (next[k] - amps[k]);
                if (enough(mesh, share, ahead)) return Verdict::works;
            }
        amps = next;
    }
    return Verdict::unknown;
}

struct Seen {
    int solved = 0, refused = 0, unknown = 0;
};

// None of the volts that are answered is more than rounding off what the load draws, and none below the iteration's.
void check_solved(Mesh const& mesh, Solution const& s, std::vector<double> const& amps) {
    auto const wanted = mesh.volts(amps);
    double size = 1e-6;
    for (double v : s.volts)
        size = std::max(size, std::abs(v));
    for (std::size_t k = 0; k < mesh.size(); ++k) {
        auto const i = s.load_amps.size() - mesh.size() + k;
        Load const& load = mesh.circuit.loads[i];
        double const volts = s.volts[at(load.plus)] - s.volts[at(load.minus)];
        CHECK(std::abs(volts * s.load_amps[i] / mesh.watts[k] - 1.0) < 1e-9 * size / volts);
        CHECK(std::abs(volts - wanted[k]) < 1e-6 * size); // where the iteration stops of itself, near the fold
    }
}

void check_mesh(Mesh const& mesh, Made made, Seen& seen) {
    std::vector<double> amps;
    Verdict const verdict = iterate(mesh, 1.0, amps, true);
    Solution const s = solve(mesh.circuit);
    if (made == Made::to_work) REQUIRE(s.status == Status::solved);
    if (made == Made::to_fail) REQUIRE(s.status == Status::no_operating_point);
    if (made == Made::to_work) REQUIRE(verdict != Verdict::fails);
    if (made == Made::to_fail) REQUIRE(verdict != Verdict::works);
    if (verdict == Verdict::unknown) {
        ++seen.unknown;
        return;
    }
    if (verdict == Verdict::works) {
        ++seen.solved;
        REQUIRE(s.status == Status::solved);
        check_solved(mesh, s, amps);
        return;
    }
    ++seen.refused;
    REQUIRE(s.status == Status::no_operating_point);
    CHECK(iterate(mesh, s.reachable_share * (1.0 - 1e-6), amps, false) == Verdict::works);
    CHECK(iterate(mesh, s.reachable_share * (1.0 + 1e-6), amps, false) == Verdict::fails);
    if (mesh.size() == 1) // maximum power transfer
        CHECK(s.reachable_share ==
              doctest::Approx(mesh.open[0] * mesh.open[0] / (4.0 * mesh.ohms[0][0] * mesh.watts[0])).epsilon(1e-9));
}

} // namespace

TEST_CASE("ten thousand meshes with constant-power loads are solved just when plain iteration finds an answer") {
    Dice dice(51);
    Seen seen;
    for (int i = 0; i < 10000;) {
        auto mesh = draw_mesh(dice);
        if (!mesh) continue;
        CAPTURE(i);
        auto const made = i % 10 < 5 ? Made::to_work : i % 10 < 9 ? Made::at_random : Made::to_fail;
        power(dice, *mesh, made);
        check_mesh(*mesh, made, seen);
        ++i;
    }
    MESSAGE("solved ", seen.solved, ", refused ", seen.refused, ", too near the fold for the iteration ", seen.unknown);
    CHECK(seen.solved > 7000);
    CHECK(seen.refused > 1000);
    CHECK(seen.unknown < 50);
}
