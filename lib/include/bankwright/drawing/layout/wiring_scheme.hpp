// What is there to draw? Batteries, everything else, and the conductors by the terminals that they join.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/drawing/drawing.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace bankwright::drawing {

// A terminal: of a battery (0 its +, 1 its -) or of a piece of equipment (in the order of terminals_of()).
struct End {
    bool on_battery = false;
    int part = 0; // index among the batteries, or among the equipment
    int terminal = 0;
    friend bool operator==(End const&, End const&) = default;
};

struct Wire {
    PartKind kind = PartKind::cable;
    std::size_t index = 0;
    End from;
    End to;
    WireSide side = WireSide::between;
    bool in_fault_loop = false;

    End const& end(int which) const { return which == 0 ? from : to; }
    bool joins_batteries() const { return from.on_battery && to.on_battery; }
};

// Whatever is no battery and no conductor.
struct Equipment {
    PartKind kind = PartKind::busbar;
    std::size_t index = 0;
    std::string id;
    std::vector<std::string> terminals;
    bool in_fault_loop = false;

    // Which side a terminal is on when the part is not turned: 0 left, 1 right.
    int side_of(int terminal) const {
        bool const two_a_side =
            kind == PartKind::connector || kind == PartKind::converter || kind == PartKind::selector;
        return two_a_side ? terminal / 2 : terminal;
    }
    // Two poles side by side.
    bool has_poles() const { return kind == PartKind::connector || kind == PartKind::converter; }

    // Ends a path: motors, loads and chargers.
    bool is_sink() const { return kind == PartKind::motor || kind == PartKind::load || kind == PartKind::charger; }
};

struct Scheme {
    int batteries = 0;
    int series_wanted = 0; // batteries a string, by the voltage of the system or the motor; 0 where nothing says
    std::vector<Equipment> equipment;
    std::vector<Wire> wires;
    std::vector<int>
        battery_groups; // by post (2 x battery + terminal): posts of one group are joined without a battery
    std::vector<bool> battery_in_fault_loop;
    std::vector<std::string> undrawn;
};

// Ends, groups and the fault loop; `side` of each conductor as its potential, its color and its terminals tell.
// A fault loop is the shortest closed loop of batteries and conductors that does not add up to nothing.
Scheme scheme_of(Bank const& bank);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/layout/wiring_scheme_inl.hpp"
#endif
