#include "bankwright/solver/load_laws.hpp"

#include <doctest/doctest.h>

using namespace bankwright::solver;
using doctest::Approx;

TEST_CASE("a machine without resistance draws c d^3 V^2") {
    SquareLaw const law{0.05, 0.0, 0.5};
    CHECK(current(law, 24.0) == Approx(0.05 * 0.125 * 576.0));
    CHECK(back_voltage(law, 24.0) == Approx(12.0));
}

TEST_CASE("a machine's back voltage, drop and chopped voltage add up, and what goes in comes out as power") {
    for (double c : {1e-6, 1e-3, 1.0, 1e3})
        for (double r : {0.0, 1e-6, 0.01, 10.0})
            for (double d : {0.01, 0.5, 1.0})
                for (double v : {1e-6, 0.1, 12.0, 48.0}) {
                    SquareLaw const law{c, r, d};
                    double const e = back_voltage(law, v), machine = c * e * e;
                    CHECK(e + machine * r == Approx(d * v).epsilon(1e-14));
                    CHECK(current(law, v) == Approx(d * machine).epsilon(1e-14));
                    CHECK(v * current(law, v) == Approx(machine * (e + machine * r)).epsilon(1e-13));
                }
}

TEST_CASE("a machine at rest or reversed draws nothing, and neither does one whose chopper is shut") {
    SquareLaw const law{0.05, 0.01, 1.0};
    CHECK(current(law, 0.0) == 0.0);
    CHECK(current(law, -12.0) == 0.0);
    CHECK(slope(law, -12.0) == 0.0);
    CHECK(current({0.05, 0.01, 0.0}, 12.0) == 0.0);
    CHECK(current_from({0.05, 0.01, 0.0}, 12.0, 0.1) == 0.0);
}

TEST_CASE("the slope is the derivative of the current") {
    for (double r : {0.0, 0.05})
        for (double v : {0.5, 12.0, 40.0}) {
            SquareLaw const law{0.05, r, 0.7};
            double const step = 1e-5 * v; // central difference: error of step^2
            double const measured = (current(law, v + step) - current(law, v - step)) / (2.0 * step);
            CHECK(slope(law, v) == Approx(measured).epsilon(1e-8));
        }
}

TEST_CASE("behind a resistance the current is what the law says at the voltage that is left") {
    for (double ohms : {1e-6, 0.01, 10.0}) {
        SquareLaw const square{0.05, 0.03, 0.6};
        double const amps = current_from(square, 24.0, ohms);
        CHECK(current(square, 24.0 - ohms * amps) == Approx(amps).epsilon(1e-9));
        LimitedSource const source{14.0, 30.0};
        CHECK(current_from(source, 15.0, ohms) == 0.0);
        CHECK(current_from(source, 14.0 - 40.0 * ohms, ohms) == -30.0);
        CHECK(current_from(source, 14.0 - 20.0 * ohms, ohms) == Approx(-20.0));
    }
}
