// Bodies of to_branches.hpp.
#pragma once

#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/charger_limits.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/devices/motor_propeller.hpp"
#include "bankwright/network/to_branches.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <stdexcept>
#include <string>

namespace bankwright {

namespace internal::circuit_parts {

inline Element gap(int from, int to) { return {Element::Is::gap, -1, from, to}; }

inline Element branch(solver::Circuit& circuit, int from, int to, Resistance resistance, Voltage emf = {}) {
    circuit.branches.push_back({from, to, resistance.value(), emf.value()});
    return {Element::Is::branch, static_cast<int>(circuit.branches.size()) - 1, from, to};
}

inline Element join(solver::Circuit& circuit, int from, int to) {
    circuit.joins.push_back({from, to});
    return {Element::Is::join, static_cast<int>(circuit.joins.size()) - 1, from, to};
}

inline Element load(solver::Circuit& circuit, int plus, int minus, solver::Law law) {
    circuit.loads.push_back({plus, minus, law});
    return {Element::Is::load, static_cast<int>(circuit.loads.size()) - 1, plus, minus};
}

// An ideal connection is one node, never a tiny resistance.
inline Element resistor(solver::Circuit& circuit, int from, int to, Resistance resistance) {
    return resistance == Resistance{} ? join(circuit, from, to) : branch(circuit, from, to, resistance);
}

inline Element contact(solver::Circuit& circuit, int from, int to, bool closed, std::optional<Resistance> resistance) {
    return closed ? resistor(circuit, from, to, resistance.value_or(Resistance{})) : gap(from, to);
}

template <class Quantity>
Quantity needed(std::optional<Quantity> const& value, std::string const& id, char const* key) {
    if (!value) throw std::invalid_argument("`" + id + "` has no `" + key + "`");
    return *value;
}

inline int landing(Network const& network, Run const& run, std::string const& terminal, char const* key) {
    auto const it = network.nodes.find(terminal);
    if (it == network.nodes.end())
        throw std::invalid_argument("`" + id_of(run) + "`: `" + key + "` names `" + terminal +
                                    "`, which the bank does not have");
    return it->second;
}

} // namespace internal::circuit_parts

BANKWRIGHT_INLINE std::vector<Element> to_branches(Battery const& battery, Surroundings const& around,
                                                   Network& network) {
    return {internal::circuit_parts::branch(
        network.circuit, node_of(network, battery.id + "-"), node_of(network, battery.id + "+"),
        internal_resistance(battery, around.ambient), open_circuit_voltage(battery, around.ambient))};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Run const& run, Surroundings const& around, Network& network) {
    int const from = internal::circuit_parts::landing(network, run, run.from, "from");
    int const to = internal::circuit_parts::landing(network, run, run.to, "to");
    if (from == to) return {internal::circuit_parts::gap(from, to)};
    return {internal::circuit_parts::resistor(network.circuit, from, to,
                                              resistance(run.conductor, around.ambient, around.joint))};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(ProtectiveDevice const& device, Surroundings const& around,
                                                   Network& network) {
    return {internal::circuit_parts::contact(
        network.circuit, node_of(network, device.id + ".line"), node_of(network, device.id + ".load"),
        around.moment.everything_closed || device.closed.value_or(true), device.resistance)};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Switch const& device, Surroundings const& around, Network& network) {
    return {internal::circuit_parts::contact(
        network.circuit, node_of(network, device.id + ".1"), node_of(network, device.id + ".2"),
        around.moment.everything_closed || device.closed.value_or(true), device.resistance)};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Shunt const& shunt, Surroundings const&, Network& network) {
    return {internal::circuit_parts::resistor(network.circuit, node_of(network, shunt.id + ".1"),
                                              node_of(network, shunt.id + ".2"), resistance_of(shunt))};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Relay const& relay, Surroundings const& around, Network& network) {
    bool const combined = around.moment.everything_closed && around.moment.combined;
    bool const closed = combined || relay.closed.value_or(closes_at(relay, around.charging));
    return {internal::circuit_parts::contact(network.circuit, node_of(network, relay.id + ".1"),
                                             node_of(network, relay.id + ".2"), closed, {})};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Selector const& selector, Surroundings const& around,
                                                   Network& network) {
    auto const at = around.moment.everything_closed && around.moment.combined
                        ? SelectorPosition::both
                        : selector.position.value_or(SelectorPosition::first);
    int const common = node_of(network, selector.id + ".common");
    auto const contact = [&](char const* terminal, bool closed) {
        return internal::circuit_parts::contact(network.circuit, node_of(network, selector.id + terminal), common,
                                                closed, {});
    };
    auto const first = contact(".1", joins_first(at));
    return {first, contact(".2", joins_second(at))};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Busbar const& busbar, Surroundings const&, Network& network) {
    int const node = node_of(network, busbar.id);
    return {internal::circuit_parts::gap(node, node)};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Connector const& connector, Surroundings const& around,
                                                   Network& network) {
    bool const mated = around.moment.everything_closed || connector.mated.value_or(true);
    auto const pole = [&](char const* sign) {
        return internal::circuit_parts::contact(network.circuit, node_of(network, connector.id + sign),
                                                node_of(network, connector.id + ".plug" + sign), mated,
                                                connector.contact);
    };
    auto const positive = pole("+");
    return {positive, pole("-")};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Motor const& motor, Surroundings const& around, Network& network) {
    int const plus = node_of(network, motor.id + "+");
    int const minus = node_of(network, motor.id + "-");
    if (around.moment.loads == LoadsAre::at_rest) return {internal::circuit_parts::gap(plus, minus)};
    if (around.moment.loads == LoadsAre::constant_current)
        return {internal::circuit_parts::load(network.circuit, plus, minus,
                                              solver::ConstantCurrent{around.moment.current.value()})};

    auto const law = propeller_law(motor);
    auto const throttle = around.moment.throttle.value_or(motor.throttle.value_or(Throttle::of(1.0)));
    solver::SquareLaw const square{law.coefficient.value(), law.winding.value(), duty(motor, throttle)};
    auto const element = internal::circuit_parts::load(network.circuit, plus, minus, square);
    if (motor.max_current) network.held.push_back({element.index, motor.max_current->value(), square});
    return {element};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Load const& load, Surroundings const& around, Network& network) {
    int const plus = node_of(network, load.id + "+");
    int const minus = node_of(network, load.id + "-");
    auto& circuit = network.circuit;
    if (around.moment.loads == LoadsAre::at_rest || (is_starter(load) && !around.moment.starters))
        return {internal::circuit_parts::gap(plus, minus)};
    if (around.moment.loads == LoadsAre::constant_current)
        return {around.has_motor ? internal::circuit_parts::gap(plus, minus)
                                 : internal::circuit_parts::load(
                                       circuit, plus, minus, solver::ConstantCurrent{around.moment.current.value()})};
    if (load.current)
        return {internal::circuit_parts::load(circuit, plus, minus, solver::ConstantCurrent{load.current->value()})};
    if (load.power)
        return {internal::circuit_parts::load(circuit, plus, minus, solver::ConstantPower{load.power->value()})};
    return {internal::circuit_parts::resistor(circuit, plus, minus,
                                              internal::circuit_parts::needed(load.resistance, load.id, "resistance"))};
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Charger const& charger, Surroundings const& around,
                                                   Network& network) {
    std::vector<Element> elements;
    bool const gives = around.moment.chargers && (around.moment.shore || is_on_board(charger)) &&
                       charger.connected.value_or(false) && charger.voltage && charger.current;
    for (int output = 1; output <= charger.outputs.value_or(1); ++output) {
        auto const stem = charger.id + "." + std::to_string(output);
        int const plus = node_of(network, stem + "+");
        int const minus = node_of(network, stem + "-");
        if (gives)
            elements.push_back(internal::circuit_parts::load(
                network.circuit, plus, minus,
                solver::LimitedSource{held_voltage(charger, around.batteries).value(), charger.current->value()}));
        else
            elements.push_back(internal::circuit_parts::gap(plus, minus));
    }
    if (!charger.isolated.value_or(true)) {
        std::size_t const outputs = elements.size();
        for (std::size_t output = 1; output < outputs; ++output)
            elements.push_back(internal::circuit_parts::join(network.circuit, elements[0].to, elements[output].to));
    }
    return elements;
}

BANKWRIGHT_INLINE std::vector<Element> to_branches(Converter const& converter, Surroundings const& around,
                                                   Network& network) {
    auto const node = [&](char const* terminal) { return node_of(network, converter.id + terminal); };
    std::vector<Element> elements;
    if (around.moment.chargers && around.moment.converters && converter.voltage && converter.power) {
        auto const efficiency = converter.efficiency ? converter.efficiency->value() : usual_efficiency;
        elements.push_back(internal::circuit_parts::load(network.circuit, node(".in+"), node(".in-"),
                                                         solver::ConstantPower{converter.power->value() / efficiency}));
        elements.push_back(internal::circuit_parts::load(
            network.circuit, node(".out+"), node(".out-"),
            solver::LimitedSource{converter.voltage->value(), (*converter.power / *converter.voltage).value()}));
        network.couplings.push_back({elements[0].index, elements[1].index, efficiency});
    } else {
        elements.push_back(internal::circuit_parts::gap(node(".in+"), node(".in-")));
        elements.push_back(internal::circuit_parts::gap(node(".out+"), node(".out-")));
    }
    if (!converter.isolated.value_or(true))
        elements.push_back(internal::circuit_parts::join(network.circuit, node(".in-"), node(".out-")));
    return elements;
}

BANKWRIGHT_INLINE Temperature temperature_of_batteries(Bank const& bank) {
    if (bank.batteries.empty()) return bank.system.ambient;
    double sum = 0.0; // [K]
    for (auto const& battery : bank.batteries)
        sum += battery.temperature.value_or(bank.system.ambient).value();
    return kelvin_point(sum / static_cast<double>(bank.batteries.size()));
}

BANKWRIGHT_INLINE Voltage charging_voltage(Bank const& bank, Moment const& moment) {
    Voltage highest{};
    for (auto const& charger : bank.chargers)
        if (moment.chargers && (moment.shore || is_on_board(charger)) && charger.connected.value_or(false) &&
            charger.voltage && charger.current)
            highest = std::max(highest, held_voltage(charger, temperature_of_batteries(bank)));
    return highest;
}

} // namespace bankwright
