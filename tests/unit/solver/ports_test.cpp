#include "bankwright/solver/loads/ports.hpp"
#include "bankwright/solver/thevenin.hpp"
#include "support/random_circuits.hpp"

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

constexpr random_circuits::Recipe recipe{.max_nodes = 12, .join_share = 0.0, .max_loads = 0, .connected = true};

} // namespace

// An ampere at one port moves the other as an ampere there moves this: Lorentz, Tellegen; Newton's method for the loads
// relies on it.
TEST_CASE("ports give way to each other alike, to the last bit, as seen by the loads and by Thevenin") {
    random_circuits::Dice dice(31);
    for (int trial = 0; trial < 200; ++trial) {
        Circuit c = random_circuits::circuit(dice, recipe);
        if (c.nodes < 5) continue;
        std::vector<NodePair> pairs;
        std::vector<std::size_t> loads;
        for (int n = 1; n < c.nodes; ++n) {
            pairs.push_back({n, 0});
            loads.push_back(c.loads.size());
            c.loads.push_back({n, 0, SquareLaw{1.0, 0.0, 1.0}});
        }
        Topology const t = topology(c);
        std::vector<double> siemens(t.lines.size(), 0.0), amps(t.lines.size(), 0.0);
        for (std::size_t b = 0; b < c.branches.size(); ++b)
            if (t.branch_line[b] >= 0)
                siemens[static_cast<std::size_t>(t.branch_line[b])] = 1.0 / c.branches[b].resistance;
        Ports const ports = reduce_to_ports(c, t, LinearNetwork(t, siemens, 64), amps, loads);
        c.loads.clear();
        TheveninSource const seen = thevenin(c, pairs);
        REQUIRE(seen.status == Status::solved);
        for (std::size_t p = 0; p < pairs.size(); ++p)
            for (std::size_t q = 0; q < pairs.size(); ++q) {
                CHECK(ports.ohm(p, q) == ports.ohm(q, p));
                CHECK(seen.ohm(p, q) == seen.ohm(q, p));
                CHECK(seen.ohm(p, q) == doctest::Approx(ports.ohm(p, q)).epsilon(1e-11).scale(1e-3 * ports.ohm(p, p)));
            }
    }
}
