// Prints the curve of open-circuit voltage and its inverse, for test_voltage_curve.py to compare with SciPy's.
#include "bankwright/devices/battery_voltage.hpp"

#include <cstdio>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("voltage curve as comma-separated values") {
    int printed = 0;
    for (auto chemistry : {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4, Chemistry::nmc}) {
        Battery battery;
        battery.chemistry = chemistry;
        battery.cells = 1;
        for (double degrees : {-17.0, -3.3, 12.5, 25.0, 41.7}) {
            for (int i = 0; i <= 200; ++i) {
                auto const charge = StateOfCharge::of(i / 200.0);
                auto const volts = open_circuit_cell_voltage(chemistry, charge, celsius(degrees));
                // away from the curve's points, where the answer is not exact by construction
                auto const reading = volts + 0.0001 * si::volt;
                auto const found = charge_from_voltage(battery, reading, celsius(degrees));
                std::printf("curve,%s,%.1f,%.17g,%.17g,%.17g,%.17g\n", std::string(name(chemistry)).c_str(), degrees,
                            charge.value(), volts.value(), reading.value(), found.best.value());
                ++printed;
            }
        }
    }
    CHECK(printed == 5 * 5 * 201);
}
