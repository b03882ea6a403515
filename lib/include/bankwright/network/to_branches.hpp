// What does each kind of part become in the circuit? One overload a kind; nothing else knows.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/network/network.hpp"

#include <vector>

namespace bankwright {

// What a part takes from the bank around it.
struct Surroundings {
    Moment moment;
    Temperature ambient;
    Resistance joint;
    Temperature batteries;  // how warm they are, in the mean
    Voltage charging{};     // the highest that a charger at work holds; 0 if none works
    bool has_motor = false; // who draws Moment::current: the motors, or else the loads
};

// Each adds the part to network.circuit and returns its elements, as listed at NetworkPart. The network already knows
// all terminals. They throw std::invalid_argument, naming part and key, where the part lacks what its model needs, and
// where a run names a terminal that the bank does not have: the reader of bank files lets neither through.
//
// battery: its open-circuit voltage behind its internal resistance
std::vector<Element> to_branches(Battery const&, Surroundings const&, Network&);
// conductor: its resistance; ideal if that is 0; nothing if both ends are on one terminal
std::vector<Element> to_branches(Run const&, Surroundings const&, Network&);
// breaker, fuse, switch: its resistance when closed, ideal if that is 0; a gap when open
std::vector<Element> to_branches(ProtectiveDevice const&, Surroundings const&, Network&);
std::vector<Element> to_branches(Switch const&, Surroundings const&, Network&);
// shunt: its resistance. relay: an ideal contact, closed while `charging` says so. selector: 1 to common, 2 to common
std::vector<Element> to_branches(Shunt const&, Surroundings const&, Network&);
std::vector<Element> to_branches(Relay const&, Surroundings const&, Network&);
std::vector<Element> to_branches(Selector const&, Surroundings const&, Network&);
std::vector<Element> to_branches(Busbar const&, Surroundings const&, Network&);
// connector: `contact` in each pole when mated
std::vector<Element> to_branches(Connector const&, Surroundings const&, Network&);
// motor: back-EMF proportional to speed and propeller torque to its square, so E = V - I R and c = I / E^2 from the
// nameplate; `control = "direct"` knows only off and full
std::vector<Element> to_branches(Motor const&, Surroundings const&, Network&);
std::vector<Element> to_branches(Load const&, Surroundings const&, Network&);
// charger: if connected, each output holds what held_voltage() says and gives at most `current`
std::vector<Element> to_branches(Charger const&, Surroundings const&, Network&);
// converter: while chargers give, its output holds `voltage` and gives `power` at most; its input takes what that needs
// at full power: input first, output second, then the join of the negatives if it is not isolated
std::vector<Element> to_branches(Converter const&, Surroundings const&, Network&);

// How warm the batteries are, in the mean: each its own `temperature`, else the ambient.
Temperature temperature_of_batteries(Bank const&);

// The highest voltage that a connected charger holds at that moment; 0 if none gives.
Voltage charging_voltage(Bank const&, Moment const&);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/network/to_branches_inl.hpp"
#endif
