#include "bankwright/solver/small_signal.hpp"

#include <doctest/doctest.h>

using namespace bankwright::solver;
using doctest::Approx;

// 12 V behind 1 ohm feeding 20 W: V^2 - 12 V + 20 = 0, V = 10 V and 2 A. There dI = -P / V^2 dV = -0.2 S dV, and the
// battery dV = de - 1 ohm dI of everything that is drawn: dV = (de - di) / (1 - 0.2), di drawn beside it.
TEST_CASE("a battery that feeds a constant power answers an ampere and a volt more as its tangent says") {
    Circuit const c{.nodes = 3,
                    .branches = {{0, 1, 1.0, 12.0}, {1, 2, 1.0, 0.0}},
                    .joins = {},
                    .loads = {{1, 0, ConstantPower{20.0}}},
                    .reference = 0};
    SmallSignal const small(c, {{1, 0}, {2, 0}, {2, 2}}, LoadsDo::follow, {});
    REQUIRE(small.operating_point().status == Status::solved);
    CHECK(small.volts(0) == Approx(10.0));
    CHECK(small.feed(0) == Feed::port);
    CHECK(small.feed(2) != Feed::port);

    SmallAnswer const drawn = small.draw(0);
    REQUIRE(drawn.load_amps.size() == 1); // of the circuit's own load, not of the pairs
    CHECK(drawn.load_volts.size() == 1);
    CHECK(drawn.load_volts[0] == Approx(-1.25));
    CHECK(drawn.load_amps[0] == Approx(0.25));
    CHECK(drawn.branch_amps[0] == Approx(1.25));
    CHECK(drawn.branch_amps[1] == Approx(0.0));
    REQUIRE(drawn.pair_volts.size() == 3);
    CHECK(drawn.pair_volts[0] == Approx(-1.25));
    CHECK(drawn.pair_volts[1] == Approx(-1.25));
    CHECK(drawn.pair_volts[2] == 0.0);
    CHECK(small.draw(1).pair_volts[1] == Approx(-2.25)); // and 1 V in the lead
    CHECK(small.draw(1).branch_amps[1] == Approx(1.0));

    SmallAnswer const pushed = small.push(0);
    REQUIRE(pushed.load_amps.size() == 1);
    CHECK(pushed.load_volts[0] == Approx(1.25));
    CHECK(pushed.load_amps[0] == Approx(-0.25));
    CHECK(pushed.branch_amps[0] == Approx(-0.25));

    SmallSignal const held(c, {{1, 0}}, LoadsDo::hold, {});
    CHECK(held.draw(0).load_volts[0] == Approx(-1.0));
    CHECK(held.draw(0).load_amps[0] == 0.0);
    CHECK(held.push(0).load_volts[0] == Approx(1.0));
}
