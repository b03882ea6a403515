// Banks with one fault put into them by hand, and a meter that reads them. Shares no code with the search for faults:
// the wiring is changed in the bank as a rigger would change it, or in the finished network where a bank cannot say it.
#pragma once

#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/solve.hpp"
#include "miswires/single_miswires.hpp"
#include "traces/reach.hpp"

#include <cmath>
#include <functional>
#include <map>
#include <random>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace traces {

using namespace bankwright;

inline constexpr char as_described[] = "as described";

struct TrueFault {
    std::string kind; // the word that the answer should use
    std::string part;
    std::string detail; // of a moved end: the terminal that it is on now
    Bank bank;
    std::function<void(Network&)> after = [](Network&) {};
    std::map<std::string, double> usual_volts = {}; // [V] by load, with nothing wrong
};

// The bank on a boat: batteries and breaker in a box, the receptacle and its motor on the bow, 17 ft away.
inline bool is_on_the_bow(std::string const& terminal) {
    return terminal.rfind("bow", 0) == 0 || terminal.rfind("troll", 0) == 0;
}
inline Bank on_a_boat(Bank bank) {
    for (auto runs : {&Bank::jumpers, &Bank::cables})
        for (auto& run : bank.*runs) {
            bool const is_long = is_on_the_bow(run.from) != is_on_the_bow(run.to);
            run.conductor.length = (is_long ? 5.18 : 0.4) * si::meter;
        }
    return bank;
}

inline double between(std::mt19937& random, double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
}

class TrueFaults {
public:
    TrueFaults(Bank const& good, std::mt19937& random) : good_(good), random_(random), distances_(good) {}

    std::vector<TrueFault> all() {
        made_.push_back({as_described, {}, {}, good_});
        of_wiring();
        of_batteries();
        of_conductors();
        of_devices();
        of_contacts();
        of_motors();
        of_loads();
        auto const usual = usual_volts();
        for (auto& fault : made_)
            fault.usual_volts = usual;
        return std::move(made_);
    }

private:
    std::map<std::string, double> usual_volts() const {
        auto const network = build(good_, Moment{});
        auto const solution = solver::solve(network.circuit);
        std::map<std::string, double> usual;
        for (auto const& load : good_.loads)
            if (solution.status == solver::Status::solved)
                usual[load.id] = solution.volts[static_cast<std::size_t>(node_of(network, load.id + "+"))] -
                                 solution.volts[static_cast<std::size_t>(node_of(network, load.id + "-"))];
        return usual;
    }

    void of_wiring() {
        for (auto const& miswire : miswires::MiswireMaker(good_).all()) {
            if (miswire.kind == "battery turned")
                made_.push_back({"reversed", miswire.culprits.front(), {}, miswires::with(good_, miswire)});
            else if (miswire.kind == "end on another post" && is_within_reach(miswire))
                made_.push_back({"moved", miswire.culprits.front(),
                                 " on " + miswire.what.substr(miswire.what.rfind(' ') + 1) + " ",
                                 miswires::with(good_, miswire)});
        }
        for (auto runs : {&Bank::jumpers, &Bank::cables})
            for (std::size_t i = 0; i < (good_.*runs).size(); ++i) {
                auto bank = good_;
                (bank.*runs).erase((bank.*runs).begin() + static_cast<std::ptrdiff_t>(i));
                made_.push_back({"missing", id_of((good_.*runs)[i]), {}, std::move(bank)});
            }
    }

    bool is_within_reach(miswires::Miswire const& miswire) const {
        auto const moved = miswires::with(good_, miswire);
        for (auto runs : {&Bank::jumpers, &Bank::cables})
            for (std::size_t i = 0; i < (good_.*runs).size(); ++i) {
                auto const &before = (good_.*runs)[i], &now = (moved.*runs)[i];
                bool const is_jumper = runs == &Bank::jumpers;
                if (before.from != now.from && !distances_.reaches(before, is_jumper, before.to, now.from))
                    return false;
                if (before.to != now.to && !distances_.reaches(before, is_jumper, before.from, now.to)) return false;
            }
        return true;
    }

    void battery(std::size_t i, char const* kind, double emf_share, double resistance_share) {
        auto bank = good_;
        auto& battery = bank.batteries[i];
        battery.emf = open_circuit_voltage(battery, bank.system.ambient) * emf_share;
        battery.resistance = internal_resistance(battery, bank.system.ambient) * resistance_share;
        made_.push_back({kind, battery.id, {}, std::move(bank)});
    }
    void of_batteries() {
        for (std::size_t i = 0; i < good_.batteries.size(); ++i) {
            battery(i, "dead", 0.0, 1.0);
            battery(i, "shorted-cell", 5.0 / 6.0, 5.0 / 6.0); // six cells of a 12 V lead-acid battery
            battery(i, "dead-cell", 5.0 / 6.0, between(random_, 5.0, 20.0));
            battery(i, "resistive", 1.0, between(random_, 3.0, 20.0));
            battery(i, "low", between(random_, 0.88, 0.96), between(random_, 1.0, 2.0));
        }
    }

    double some_ohms() { return 0.01 * std::pow(10.0, between(random_, 0.0, 3.7)); } // 10 mohm to 50 ohm

    void of_conductors() {
        for (auto runs : {&Bank::jumpers, &Bank::cables})
            for (std::size_t i = 0; i < (good_.*runs).size(); ++i) {
                auto bank = good_;
                auto& conductor = (bank.*runs)[i].conductor;
                conductor.resistance =
                    resistance(conductor, bank.system.ambient, bank.system.joint) + some_ohms() * si::ohm;
                made_.push_back({"resistive", conductor.id, {}, std::move(bank)});
            }
    }

    void of_devices() {
        for (auto devices : {&Bank::breakers, &Bank::fuses})
            for (std::size_t i = 0; i < (good_.*devices).size(); ++i) {
                auto bank = good_;
                auto& device = (bank.*devices)[i];
                device.resistance = device.resistance.value_or(Resistance{}) + some_ohms() * si::ohm;
                made_.push_back({"resistive", device.id, {}, bank});
                device.closed = false;
                made_.push_back({"open", device.id, {}, std::move(bank)});
            }
        for (auto const& connector : good_.connectors)
            for (std::size_t pole : {0u, 1u}) {
                auto const branch = [id = connector.id, pole](Network const& network) {
                    return static_cast<std::ptrdiff_t>(part_of(network, id).elements[pole].index);
                };
                made_.push_back({"resistive", connector.id, pole == 0 ? "positive" : "negative", good_,
                                 [branch, ohms = some_ohms()](Network& network) {
                                     network.circuit.branches[static_cast<std::size_t>(branch(network))].resistance +=
                                         ohms;
                                 }});
                made_.push_back(
                    {"open", connector.id, pole == 0 ? "positive" : "negative", good_, [branch](Network& network) {
                         auto& branches = network.circuit.branches;
                         branches.erase(branches.begin() + branch(network));
                     }});
            }
    }

    // Of a switch, a relay and a selector what is closed, and a shunt: worse than it should be, or open.
    void of_contacts() {
        auto const network = build(good_, Moment{});
        for (auto const& part : network.parts) {
            if (part.kind != PartKind::switch_ && part.kind != PartKind::relay && part.kind != PartKind::selector &&
                part.kind != PartKind::shunt)
                continue;
            for (std::size_t e = 0; e < part.elements.size(); ++e) {
                if (part.elements[e].is == Element::Is::gap) continue;
                std::string const detail = part.kind != PartKind::selector ? "" : e == 0 ? "position 1" : "position 2";
                made_.push_back(
                    {"resistive", part.id, detail, good_, [id = part.id, e, ohms = some_ohms()](Network& one) {
                         put_between(one, part_of(one, id).elements[e], ohms);
                     }});
                made_.push_back({"open", part.id, detail, good_, [id = part.id, e](Network& one) {
                                     put_between(one, part_of(one, id).elements[e], 1e12); // as good as nothing
                                 }});
            }
        }
    }
    static void put_between(Network& network, Element const& element, double ohms) {
        auto& circuit = network.circuit;
        auto const at = static_cast<std::size_t>(element.index);
        if (element.is == Element::Is::branch) circuit.branches[at].resistance += ohms;
        if (element.is != Element::Is::join) return;
        auto const join = circuit.joins[at];
        circuit.joins[at].to = join.from;
        circuit.branches.push_back({join.from, join.to, ohms, 0.0});
    }

    void of_loads() {
        for (auto const& load : good_.loads) {
            exchanged(load.id, load.id + "+", load.id + "-", "");
            made_.push_back({"open", load.id, {}, good_, [id = load.id](Network& network) {
                                 auto const& element = part_of(network, id).elements.front();
                                 if (element.is == Element::Is::load)
                                     network.circuit.loads[static_cast<std::size_t>(element.index)].law =
                                         solver::ConstantCurrent{0.0};
                                 if (element.is == Element::Is::branch) put_between(network, element, 1e12);
                             }});
        }
    }

    void exchanged(std::string const& part, std::string const& plus, std::string const& minus, char const* side) {
        auto bank = good_;
        miswires::exchange(bank, plus, minus);
        made_.push_back({"exchanged", part, side, std::move(bank)});
    }

    void of_motors() {
        for (auto const& connector : good_.connectors) {
            exchanged(connector.id, connector.id + "+", connector.id + "-", "receptacle");
            exchanged(connector.id, connector.id + ".plug+", connector.id + ".plug-", "plug");
            auto bank = good_;
            for (auto& one : bank.connectors)
                if (one.id == connector.id) one.mated = false;
            made_.push_back({"open", connector.id, "both", std::move(bank)});
        }
        for (std::size_t m = 0; m < good_.motors.size(); ++m) {
            auto const& id = good_.motors[m].id;
            exchanged(id, id + "+", id + "-", "");
            made_.push_back({"open", id, {}, good_, [id](Network& network) {
                                 auto const& element = part_of(network, id).elements.front();
                                 if (element.is == Element::Is::load)
                                     network.circuit.loads[static_cast<std::size_t>(element.index)].law =
                                         solver::ConstantCurrent{0.0};
                             }});
            auto bank = good_;
            bank.motors[m].current = *bank.motors[m].current * between(random_, 1.7, 4.0);
            made_.push_back({"stalled", id, {}, std::move(bank)});
        }
    }

    Bank const& good_;
    std::mt19937& random_;
    Distances distances_;
    std::vector<TrueFault> made_;
};

// The same bank as it stands on one boat: no battery and no conductor is quite what was described.
inline Bank as_built(Bank bank, std::mt19937& random) {
    std::normal_distribution<double> normal;
    for (auto& battery : bank.batteries) {
        auto const drawn = open_circuit_voltage(battery, bank.system.ambient);
        battery.emf = drawn * (1.0 + 0.005 * normal(random));
        battery.resistance = internal_resistance(battery, bank.system.ambient) * std::exp(0.15 * normal(random));
    }
    for (auto runs : {&Bank::jumpers, &Bank::cables})
        for (auto& run : bank.*runs)
            run.conductor.resistance =
                resistance(run.conductor, bank.system.ambient, bank.system.joint) * std::exp(0.15 * normal(random));
    return bank;
}

// No load takes its current, or its power, at a fraction of its voltage: below 70 % of it one is a resistor here.
inline bool starve(Network& network, solver::Solution const& solution, TrueFault const& fault) {
    bool any = false;
    for (auto const& part : network.parts) {
        auto const usual = fault.usual_volts.find(part.id);
        if (usual == fault.usual_volts.end() || part.elements.front().is != Element::Is::load) continue;
        auto& load = network.circuit.loads[static_cast<std::size_t>(part.elements.front().index)];
        if (solution.status == solver::Status::solved && solution.island[static_cast<std::size_t>(load.plus)] !=
                                                             solution.island[static_cast<std::size_t>(load.minus)])
            continue;
        double const volts = solution.status != solver::Status::solved
                                 ? 0.0
                                 : solution.volts[static_cast<std::size_t>(load.plus)] -
                                       solution.volts[static_cast<std::size_t>(load.minus)];
        double amperes = 0.0;
        if (auto const* current = std::get_if<solver::ConstantCurrent>(&load.law)) amperes = current->amperes;
        if (auto const* power = std::get_if<solver::ConstantPower>(&load.law)) amperes = power->watts / usual->second;
        if (amperes <= 0.0 || volts >= 0.7 * usual->second) continue;
        network.circuit.branches.push_back({load.plus, load.minus, usual->second / amperes, 0.0});
        load.law = solver::ConstantCurrent{0.0};
        any = true;
    }
    return any;
}

// What a meter of 0.5 % + 2 digits of 10 mV shows: off by anything within that, then rounded to its last digit. Two
// islands read 0.
inline Voltage read_volts(std::vector<TrueFault> const& faults, Bank const& built, Moment const& moment,
                          std::string const& red, std::string const& black, std::mt19937& random) {
    auto network = build(built, moment);
    for (auto const& fault : faults)
        fault.after(network);
    auto solution = solver::solve(network.circuit);
    if (!faults.empty() && moment.loads == LoadsAre::as_described && starve(network, solution, faults.front()))
        solution = solver::solve(network.circuit);
    double volts = 0.0;
    if (solution.status == solver::Status::solved) {
        auto const a = static_cast<std::size_t>(node_of(network, red)),
                   b = static_cast<std::size_t>(node_of(network, black));
        if (solution.island[a] == solution.island[b]) volts = solution.volts[a] - solution.volts[b];
    }
    double const limit = 0.005 * std::abs(volts) + 2 * 0.01;
    return std::round((volts + between(random, -limit, limit)) / 0.01) * 0.01 * si::volt;
}

} // namespace traces
