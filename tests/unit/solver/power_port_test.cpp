// A load whose voltage is foreseen draws what it draws anyway, however the voltage goes.
#include "bankwright/solver/in_time/power_port.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include <doctest/doctest.h>

using bankwright::solver::ConstantPower;
using bankwright::solver::current_from;
using bankwright::solver::PowerPort;

namespace {

// By the textbook's root alone, in more digits: V I - R I^2 = P, the smaller of the two currents.
double by_root(double watts, double volts, double ohms) {
    long double const v = volts, r = ohms, p = watts;
    return static_cast<double>(2 * p / (v + sqrtl(v * v - 4 * r * p)));
}

double asked(PowerPort& port, double volts) { return port.amps(volts - port.foreseen()); }

void check_along(double watts, double ohms, std::vector<double> const& course) {
    PowerPort port({watts}, ohms);
    for (double volts : course) {
        CAPTURE(volts);
        CAPTURE(ohms);
        double const slack = volts * volts / (volts * volts - 4.0 * ohms * watts); // what a root makes of a rounding
        CHECK(asked(port, volts) == doctest::Approx(by_root(watts, volts, ohms)).epsilon(4e-16 * (1.0 + slack)));
    }
}

} // namespace

TEST_CASE("along a line, along a curve, over kinks and back, the foreseen current is the root's") {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> uniform(0.0, 1.0);
    for (int bank = 0; bank < 200; ++bank) {
        double const watts = 10.0 + 4000.0 * uniform(random);
        double const ohms = std::pow(10.0, -9.0 * uniform(random)) * 36.0 * 36.0 / 4.0 / watts * 0.9;
        std::vector<double> course;
        double volts = 40.0, slope = -0.1 * std::pow(10.0, -8.0 * uniform(random));
        double const bend = slope * 1e-3 * (uniform(random) - 0.5);
        for (int step = 0; step < 60; ++step) {
            if (step == 20) slope *= 3.0 * uniform(random); // a kink
            if (step == 40) volts += 0.5;                   // a jump
            course.push_back(volts);
            volts = std::max(volts + slope, 36.5);
            slope += bend;
        }
        check_along(watts, ohms, course);
    }
}

TEST_CASE("close to the most that the source can give") {
    double const ohms = 0.1, volts = 12.0, most = volts * volts / 4.0 / ohms;
    PowerPort port({most * (1.0 - 1e-6)}, ohms);
    for (int step = 0; step < 200; ++step) { // down to where nothing feeds it any more, and up again
        double const now = volts * (1.0 - 1e-8 * (step < 100 ? step : 200 - step));
        double const expected = current_from(ConstantPower{most * (1.0 - 1e-6)}, now, ohms);
        double const found = asked(port, now);
        CHECK(std::isnan(found) == std::isnan(expected));
        if (!std::isnan(expected)) CHECK(found == doctest::Approx(expected).epsilon(1e-12)); // D / V is 1e-3
    }
}

TEST_CASE("what feeds nothing, what is reversed and what is no number leaves no trace") {
    constexpr double none = std::numeric_limits<double>::quiet_NaN(), endless = std::numeric_limits<double>::infinity();
    PowerPort port({100.0}, 0.01);
    for (double odd : {0.0, -12.0, 1.0, 100.0, endless, none}) {
        CAPTURE(odd);
        double const expected = current_from(ConstantPower{100.0}, odd, 0.01), found = asked(port, odd);
        CHECK((found == expected || (std::isnan(found) && std::isnan(expected))));
        for (int again = 0; again < 3; ++again)
            CHECK(asked(port, 12.0) == doctest::Approx(by_root(100.0, 12.0, 0.01)).epsilon(1e-14)); // of 100 V
    }
    PowerPort idle({0.0}, 0.01);
    for (double volts : {12.0, 12.0, 11.9, 11.8, 0.0, 0.0, 0.0})
        CHECK(asked(idle, volts) == 0.0);
}
