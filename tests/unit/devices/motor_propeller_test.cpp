#include "bankwright/devices/motor_propeller.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {
Motor troll(double winding = 0.05) {
    Motor motor;
    motor.id = "troll";
    motor.voltage = 36.0 * si::volt;
    motor.current = 50.0 * si::ampere;
    if (winding > 0.0) motor.winding = winding * si::ohm;
    return motor;
}
auto const full = Throttle::percent(100);
MotorState at(Motor const& motor, double volts, Throttle throttle = full) {
    return motor_state(motor, volts * si::volt, throttle);
}
} // namespace

TEST_CASE("at the nameplate voltage and full throttle a motor draws its nameplate current") {
    for (double winding : {0.0, 0.01, 0.2}) {
        auto const state = at(troll(winding), 36.0);
        CHECK(state.drawn.value() == doctest::Approx(50.0).epsilon(1e-12));
        CHECK(state.speed == doctest::Approx(1.0));
        CHECK(state.thrust == doctest::Approx(1.0));
    }
}

TEST_CASE("without a winding the current goes as the square of the voltage") {
    CHECK(at(troll(0.0), 18.0).drawn.value() == doctest::Approx(12.5));
}

TEST_CASE("the machine's equation holds at every voltage and throttle") {
    auto const motor = troll(0.12);
    auto const law = propeller_law(motor);
    for (double volts : {0.1, 12.0, 30.0, 45.0})
        for (double throttle : {0.05, 0.5, 1.0}) {
            auto const state = at(motor, volts, Throttle::of(throttle));
            CHECK(state.back_emf.value() + state.machine.value() * law.winding.value() ==
                  doctest::Approx(throttle * volts).epsilon(1e-12));
            // no loss in the chopper: what is drawn is what turns and what heats
            CHECK(state.drawn.value() * volts ==
                  doctest::Approx(state.shaft.value() + state.heat.value()).epsilon(1e-12));
        }
}

TEST_CASE("half throttle draws about an eighth, because power goes as the cube of the speed") {
    CHECK(at(troll(0.0), 36.0, Throttle::percent(50)).drawn.value() == doctest::Approx(50.0 / 8.0));
}

TEST_CASE("a motor without a speed control is off or full") {
    auto motor = troll();
    motor.control = SpeedControl::direct;
    CHECK(at(motor, 36.0, Throttle::percent(30)).drawn.value() == doctest::Approx(50.0));
    CHECK(at(motor, 36.0, Throttle::percent(0)).drawn.value() == 0.0);
}

TEST_CASE("a dead or reversed supply draws nothing") {
    CHECK(at(troll(), 0.0).drawn.value() == 0.0);
    CHECK(at(troll(), -36.0).drawn.value() == 0.0);
}

TEST_CASE("the stall current needs the winding") {
    CHECK(stall_current(troll(), 36.0 * si::volt)->value() == doctest::Approx(720.0));
    CHECK_FALSE(stall_current(troll(0.0), 36.0 * si::volt));
}

TEST_CASE("thrust falls with the square of the back-EMF") {
    auto motor = troll(0.0);
    CHECK_FALSE(thrust(motor, 36.0 * si::volt, full));
    motor.thrust = 400.0 * si::newton;
    CHECK(thrust(motor, 30.0 * si::volt, full)->value() == doctest::Approx(400.0 * 25.0 / 36.0));
}

TEST_CASE("a nameplate that cannot be is refused") {
    CHECK_THROWS_WITH_AS(propeller_law(troll(1.0)), doctest::Contains("winding"), std::invalid_argument);
    auto motor = troll();
    motor.current.reset();
    CHECK_THROWS_WITH_AS(propeller_law(motor), doctest::Contains("current"), std::invalid_argument);
}
