// What is told of a course through time, whether the bank runs down or charges: samples, energies, what befell a
// battery.
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"

#include <string>
#include <vector>

namespace bankwright {

// One moment of the run. By battery, in the bank's order.
struct BatterySample {
    Duration time{};
    std::vector<StateOfCharge> charge;
    std::vector<Current> current; // positive when it discharges
    std::vector<Voltage> voltage; // across its posts
};

// A lithium battery's protective disconnect opened, and the others went on without it.
struct DroppedOut {
    std::string battery;
    Duration time{};
};

// A weak cell came to its end before the others of its battery, and their current drives it backwards from there.
struct ReversedCell {
    std::string battery;
    Duration time{};
    Voltage deepest{}; // across one such cell, negative
};

// Where the energy went. given = battery_heat + wiring_heat + used - charged, at every moment and so over the time.
struct EnergySplit {
    Energy given{};        // by the cells; negative while they charge
    Energy battery_heat{}; // in the batteries' resistances
    Energy wiring_heat{};  // in conductors, joints and contacts
    Energy used{};         // by motors and loads
    Energy charged{};      // by the chargers
};

} // namespace bankwright
