// A circuit as a source, against quadruple precision: V0 and Z from currents drawn at its pairs, and the bolted short.
#include "bankwright/solver/thevenin.hpp"
#include "reference/slow_solver.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using random_circuits::Dice;

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

struct Worst {
    double volts = 0.0; // relative to the largest emf or voltage
    double ohms = 0.0;  // relative to the pair's own resistance
    double amps = 0.0;  // of the short, relative to the largest current then
};

void compare(Circuit const& circuit, std::vector<NodePair> const& pairs, Worst& worst) {
    auto const ours = thevenin(circuit, pairs);
    REQUIRE(ours.status == Status::solved);
    auto const rest = slow::solve(circuit);
    auto const across = [](slow::Answer const& answer, NodePair const& pair) {
        return answer.volts[at(pair.plus)] - answer.volts[at(pair.minus)];
    };
    double size = 1e-6;
    for (Branch const& b : circuit.branches)
        size = std::max(size, std::abs(b.emf));
    for (auto v : rest.volts)
        size = std::max(size, std::abs(static_cast<double>(v)));
    std::vector<std::vector<slow::Quad>> ohms;
    for (std::size_t p = 0; p < pairs.size(); ++p) {
        Circuit drawn = circuit;
        drawn.loads.push_back({pairs[p].plus, pairs[p].minus, ConstantCurrent{1.0}});
        auto const answer = slow::solve(drawn);
        ohms.emplace_back();
        for (NodePair const& q : pairs)
            ohms.back().push_back(across(rest, q) - across(answer, q));
    }
    for (std::size_t p = 0; p < pairs.size(); ++p) {
        worst.volts =
            std::max(worst.volts, std::abs(static_cast<double>(ours.open_volts[p] - across(rest, pairs[p]))) / size);
        for (std::size_t q = 0; q < pairs.size(); ++q) {
            double const own = static_cast<double>(std::max(ohms[p][p], ohms[q][q]));
            if (own > 1e-9)
                worst.ohms = std::max(worst.ohms, std::abs(static_cast<double>(ours.ohm(p, q) - ohms[p][q])) / own);
        }
        if (!circuit.loads.empty() || ours.feeds[p] != Feed::port || // a shorted load draws nothing
            std::abs(ours.open_volts[p]) < 1e-3 * size)
            continue;
        Circuit shorted = circuit;
        shorted.joins.push_back({pairs[p].plus, pairs[p].minus});
        auto const bolted = solve(shorted);
        double largest = std::abs(bolted.join_amps.back());
        for (double amps : bolted.branch_amps)
            largest = std::max(largest, std::abs(amps));
        worst.amps =
            std::max(worst.amps, std::abs(ours.open_volts[p] / ours.ohm(p, p) - bolted.join_amps.back()) / largest);
    }
}

} // namespace

// Reached: 6e-16, 5e-16 and 2e-15.
TEST_CASE("seen from two pairs at once a random circuit is the source that quadruple precision says") {
    Dice dice(81);
    Worst worst;
    for (int i = 0; i < 400; ++i) {
        Circuit const c = random_circuits::circuit(dice, {.max_nodes = 8, .join_share = 0.05, .connected = true});
        compare(c, {{dice.below(c.nodes), dice.below(c.nodes)}, {dice.below(c.nodes), dice.below(c.nodes)}}, worst);
    }
    MESSAGE("worst ", worst.volts, " ", worst.ohms, " ", worst.amps);
    CHECK(worst.volts < 1e-14);
    CHECK(worst.ohms < 1e-14);
    CHECK(worst.amps < 1e-14);
}
