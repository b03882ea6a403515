// What the user wrote: the parts of one bank, in the author's order. Plain data; nothing is derived here.
#pragma once

#include "bankwright/bank/part_kind.hpp"
#include "bankwright/devices/battery.hpp"
#include "bankwright/devices/charger.hpp"
#include "bankwright/devices/conductor.hpp"
#include "bankwright/devices/converter.hpp"
#include "bankwright/devices/joining.hpp"
#include "bankwright/devices/load.hpp"
#include "bankwright/devices/motor.hpp"
#include "bankwright/devices/protection.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// A conductor and the two terminals it is landed on, by name: "A+", "CB.line", "bow.plug+", "BUS".
struct Run {
    Conductor conductor;
    std::string from;
    std::string to;
    friend bool operator==(Run const&, Run const&) = default;
};

struct System {
    std::optional<Voltage> voltage;       // nominal, what the load expects
    Temperature ambient = celsius(25.0);  // of batteries and conductors unless they say otherwise
    std::optional<Duration> runtime;      // wanted, at the motor's throttle
    std::optional<StateOfCharge> reserve; // charge at which a run is over; usual_reserve() unless said
    Resistance joint = 0.0 * si::ohm;     // one bolted or crimped joint, unless a conductor says otherwise
    std::optional<Ratio> drop = {};       // wanted voltage drop over the voltage of the system; 3 % unless said
    std::optional<std::vector<WireSize>> stock =
        {}; // sizes of conductors to choose from; those usually sold unless said
    friend bool operator==(System const&, System const&) = default;
};

// A finding that somebody has looked at.
struct Acceptance {
    std::string rule;
    std::string part; // empty: any part
    std::string reason;
    friend bool operator==(Acceptance const&, Acceptance const&) = default;
};

// How far a value may lie from what the file says: "4 mohm +/- 10 %". Of a value that is a percentage itself, such as a
// state of charge, the spread is in points: "90 % +/- 5 %" is 85 % to 95 %.
struct Tolerance {
    std::string part; // empty: [system]
    std::string key;
    Spread spread;
    friend bool operator==(Tolerance const&, Tolerance const&) = default;
};

struct Bank {
    std::string name;
    System system;
    std::vector<Battery> batteries;
    std::vector<Run> jumpers;
    std::vector<Run> cables;
    std::vector<ProtectiveDevice> breakers;
    std::vector<ProtectiveDevice> fuses;
    std::vector<Switch> switches;
    std::vector<Shunt> shunts;
    std::vector<Relay> relays;
    std::vector<Selector> selectors;
    std::vector<Busbar> busbars;
    std::vector<Connector> connectors;
    std::vector<Motor> motors;
    std::vector<Load> loads;
    std::vector<Charger> chargers;
    std::vector<Converter> converters;
    std::vector<Acceptance> accepted;
    std::vector<Tolerance> tolerances; // [system]'s first, then part by part
    friend bool operator==(Bank const&, Bank const&) = default;
};

inline std::string const& id_of(Run const& run) { return run.conductor.id; }
template <class Part>
std::string const& id_of(Part const& part) {
    return part.id;
}

// Calls visit(kind, part) for every part, section by section, in the author's order within each.
template <class BankLike, class Visit>
void for_each_part(BankLike& bank, Visit&& visit) {
    for (auto& part : bank.batteries)
        visit(PartKind::battery, part);
    for (auto& part : bank.jumpers)
        visit(PartKind::jumper, part);
    for (auto& part : bank.cables)
        visit(PartKind::cable, part);
    for (auto& part : bank.breakers)
        visit(PartKind::breaker, part);
    for (auto& part : bank.fuses)
        visit(PartKind::fuse, part);
    for (auto& part : bank.switches)
        visit(PartKind::switch_, part);
    for (auto& part : bank.shunts)
        visit(PartKind::shunt, part);
    for (auto& part : bank.relays)
        visit(PartKind::relay, part);
    for (auto& part : bank.selectors)
        visit(PartKind::selector, part);
    for (auto& part : bank.busbars)
        visit(PartKind::busbar, part);
    for (auto& part : bank.connectors)
        visit(PartKind::connector, part);
    for (auto& part : bank.motors)
        visit(PartKind::motor, part);
    for (auto& part : bank.loads)
        visit(PartKind::load, part);
    for (auto& part : bank.chargers)
        visit(PartKind::charger, part);
    for (auto& part : bank.converters)
        visit(PartKind::converter, part);
}

} // namespace bankwright
