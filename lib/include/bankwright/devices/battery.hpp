// What a battery's label and its owner say of it. What follows from that is in the other battery_*.hpp.
#pragma once

#include "bankwright/devices/chemistry.hpp"
#include "bankwright/devices/date.hpp"
#include "bankwright/devices/role.hpp"
#include "bankwright/units/dimensions.hpp"
#include "bankwright/units/fractions.hpp"
#include "bankwright/units/price.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"

#include <optional>
#include <string>

namespace bankwright {

struct Battery {
    std::string id; // terminals: id+  id-
    std::optional<Chemistry> chemistry;
    std::optional<Voltage> voltage;         // nominal, as on the label
    std::optional<int> cells;               // in series inside
    std::optional<Charge> capacity;         // at the rate of capacity_hours, 25 degC
    std::optional<Duration> capacity_hours; // 20 h unless the label says otherwise
    std::optional<Duration> reserve;        // reserve capacity: minutes at 25 A and 27 degC to 1.75 V a cell, SAE J537
    std::optional<Current> cranking;        // cold cranking amperes, SAE J537
    std::optional<Resistance> resistance;   // of the whole battery
    std::optional<StateOfCharge> charge;    // full unless said
    std::optional<Health> health;           // 100 % unless said
    std::optional<Voltage> emf;             // open-circuit voltage, if it has been measured
    std::optional<Temperature> temperature; // ambient unless said
    std::optional<Date> made;
    std::optional<int> dead_cells;       // cells that give no voltage
    std::optional<int> weak_cells;       // cells that hold less than the others
    std::optional<Health> weak_capacity; // of one of those, over that of a sound cell
    std::optional<Current> max_discharge;
    std::optional<Current> max_charge;
    std::optional<int> max_series;
    std::optional<int> max_parallel;
    std::optional<Voltage> low_cutoff; // where its protective disconnect, or its owner, stops a discharge
    std::optional<Voltage> high_cutoff;
    std::optional<Mass> mass;
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    std::optional<Role> role = {};         // nothing in particular unless said
    std::optional<Price> price = {};       // of one
    std::optional<Dimensions> size = {};

    friend bool operator==(Battery const&, Battery const&) = default;
};

} // namespace bankwright
