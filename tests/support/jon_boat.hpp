// The 16-ft jon boat (invented): three batteries in series, a breaker, a bow receptacle, a motor. With round numbers,
// so that its operating point can be worked out by hand: 38.1 V behind 50 milliohm.
#pragma once

#include "bankwright/bank/bank.hpp"

#include <string>
#include <utility>

namespace bankwright::support {

template <class Part>
Part named(std::string id) {
    Part part;
    part.id = std::move(id);
    return part;
}

inline Battery plain_battery(std::string id, double emf, double ohms) {
    auto battery = named<Battery>(std::move(id));
    battery.voltage = 12.0 * si::volt;
    battery.emf = emf * si::volt;
    battery.resistance = ohms * si::ohm;
    return battery;
}

inline Run plain_run(std::string id, std::string from, std::string to, double ohms) {
    Run run;
    run.conductor.id = std::move(id);
    run.conductor.resistance = ohms * si::ohm;
    run.from = std::move(from);
    run.to = std::move(to);
    return run;
}

inline Bank jon_boat() {
    Bank bank;
    bank.name = "16-ft jon boat, bow motor (invented)";
    bank.system.voltage = 36.0 * si::volt;
    bank.batteries = {plain_battery("A", 12.8, 4e-3), plain_battery("B", 12.6, 5e-3), plain_battery("C", 12.7, 6e-3)};
    bank.jumpers = {plain_run("J1", "A+", "B-", 1e-3), plain_run("J2", "B+", "C-", 1e-3)};
    bank.cables = {plain_run("feed", "C+", "CB.line", 1e-3), plain_run("main", "CB.load", "bow+", 12e-3),
                   plain_run("return", "bow-", "A-", 12e-3), plain_run("tail-p", "bow.plug+", "troll+", 3e-3),
                   plain_run("tail-n", "troll-", "bow.plug-", 3e-3)};
    auto breaker = named<ProtectiveDevice>("CB");
    breaker.rating = 60.0 * si::ampere;
    breaker.resistance = 1e-3 * si::ohm;
    bank.breakers = {breaker};
    auto bow = named<Connector>("bow");
    bow.contact = 0.5e-3 * si::ohm;
    bank.connectors = {bow};
    auto troll = named<Motor>("troll");
    troll.voltage = 36.0 * si::volt;
    troll.current = 50.0 * si::ampere;
    bank.motors = {troll};
    return bank;
}

} // namespace bankwright::support
