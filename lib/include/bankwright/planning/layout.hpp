// How is a planned bank put together? From the choices to the bank: batteries, jumpers, the main leads, the breaker,
// the receptacle on the bow with its plug, the motor, the charger.
//
// One string is a row of batteries. Two strings of lead-acid batteries are linked at both ends, and the main leads are
// landed diagonally. More, and any of lithium, are led to two busbars, each string through a fuse of its own.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/planning/wish.hpp"

#include <optional>

namespace bankwright {

struct Layout {
    Battery battery;
    int series = 1;
    int strings = 1;
    Resistance joint{};
    Conductor wire; // insulation and tin of every conductor
    WireSize main;  // of jumpers, links and main leads
    ProtectiveDevice device;
    bool device_is_fuse = false;
    std::optional<Switch> disconnect;            // beside a fuse, which does not switch
    std::optional<ProtectiveDevice> string_fuse; // strings on busbars; none: linked
    std::optional<Busbar> busbar;                // for them, and for studs on the bow
    std::optional<Connector> receptacle;         // none: the main leads go to the motor
    WireSize tail;                               // between receptacle and motor
    bool studs_on_bow = false;                   // main leads too thick for the receptacle end there, short tails go on
    std::optional<ProtectiveDevice> charger_fuse;
    WireSize charger_lead;
};

Bank lay_out(Wish const& wish, Layout const& layout);

// What an absorbing charger holds across it: the middle of what its chemistry asks for, in tenths of a volt.
Voltage charging_voltage(Battery const& battery, int series);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/planning/layout_inl.hpp"
#endif
