// Seeded banks for the laws: series, parallel, cross-tied, through busbars, with good and with weird wiring.
// The same seed gives the same bank on every machine.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/terminals.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace bankwright::support {

class RandomBank {
public:
    // `metered`: some have a relay, a selector and a shunt, too.
    RandomBank(std::uint64_t seed, bool weird, bool metered = true) : engine_(seed), weird_(weird), metered_(metered) {}

    Bank make() {
        series_ = between(1, 4);
        parallel_ = between(1, 4);
        batteries();
        strings();
        auto const [plus, minus] = ends();
        cross_ties();
        motor_branch(plus, minus);
        house_loads(plus, minus);
        if (metered_) metered_load(plus, minus);
        if (weird_) oddities();
        return bank_;
    }

private:
    int between(int low, int high) { // both included
        return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
    }
    double unit() { return static_cast<double>(engine_() >> 11) * 0x1.0p-53; } // [0, 1)
    double uniform(double low, double high) { return low + (high - low) * unit(); }
    double log_uniform(double low, double high) { return low * std::exp(std::log(high / low) * unit()); }
    bool chance(double probability) { return unit() < probability; }

    std::string battery(int string, int place) const {
        return "B" + std::to_string(string) + "x" + std::to_string(place);
    }

    void batteries() {
        for (int s = 0; s < parallel_; ++s)
            for (int i = 0; i < series_; ++i) {
                Battery b;
                b.id = battery(s, i);
                b.voltage = 12.0 * si::volt;
                b.emf = uniform(12.2, 12.9) * si::volt;
                b.resistance = log_uniform(3e-3, 20e-3) * si::ohm;
                bank_.batteries.push_back(b);
            }
    }

    // A conductor: ideal, by its resistance, or by size and length.
    std::string wire(std::vector<Run>& section, std::string const& from, std::string const& to) {
        Run run;
        run.conductor.id = "w" + std::to_string(++wires_);
        run.from = from;
        run.to = to;
        if (chance(0.15)) {
            run.conductor.resistance = Resistance{};
        } else if (chance(0.5)) {
            run.conductor.resistance = log_uniform(1e-4, 1e-2) * si::ohm;
        } else {
            run.conductor.size = WireSize(Awg{between(-3, 8)});
            run.conductor.length = uniform(0.1, 3.0) * si::meter;
            if (chance(0.5)) run.conductor.joint = 1e-4 * si::ohm;
            if (chance(0.3)) run.conductor.temperature = celsius(uniform(-20.0, 70.0));
        }
        section.push_back(run);
        return run.conductor.id;
    }
    void jumper(std::string const& from, std::string const& to) { wire(bank_.jumpers, from, to); }
    void cable(std::string const& from, std::string const& to) { wire(bank_.cables, from, to); }

    void strings() {
        for (int s = 0; s < parallel_; ++s)
            for (int i = 0; i + 1 < series_; ++i)
                jumper(battery(s, i) + "+", battery(s, i + 1) + "-");
    }

    // Joins the strings in parallel and says where the main leads are landed.
    std::pair<std::string, std::string> ends() {
        if (parallel_ > 1 && chance(0.4)) {
            bank_.busbars.push_back({"POS", {}, {}});
            bank_.busbars.push_back({"NEG", {}, {}});
            for (int s = 0; s < parallel_; ++s) {
                cable(battery(s, series_ - 1) + "+", "POS");
                cable(battery(s, 0) + "-", "NEG");
            }
            return {"POS", "NEG"};
        }
        for (int s = 0; s + 1 < parallel_; ++s) {
            jumper(battery(s, series_ - 1) + "+", battery(s + 1, series_ - 1) + "+");
            jumper(battery(s, 0) + "-", battery(s + 1, 0) + "-");
        }
        int const main_leads = chance(0.5) ? 0 : parallel_ - 1; // at one end, or diagonally
        return {battery(0, series_ - 1) + "+", battery(main_leads, 0) + "-"};
    }

    void cross_ties() {
        for (int s = 0; s + 1 < parallel_; ++s)
            for (int i = 0; i + 1 < series_; ++i)
                if (chance(0.3)) jumper(battery(s, i) + "+", battery(s + 1, i) + "+");
        while (chance(0.2)) { // one more link between posts of one potential
            int const i = between(0, series_ - 1);
            auto const from = battery(between(0, parallel_ - 1), i) + "+";
            auto const to = battery(between(0, parallel_ - 1), i) + "+";
            if (from != to) jumper(from, to);
        }
    }

    ProtectiveDevice device(std::string id) {
        ProtectiveDevice d;
        d.id = std::move(id);
        d.rating = 60.0 * si::ampere;
        if (chance(0.7)) d.resistance = log_uniform(1e-4, 5e-3) * si::ohm;
        if (weird_ && chance(0.1)) d.closed = false;
        return d;
    }

    void motor_branch(std::string const& plus, std::string const& minus) {
        bank_.breakers.push_back(device("CB"));
        cable(plus, "CB.line");
        Connector bow;
        bow.id = "bow";
        if (chance(0.7)) bow.contact = log_uniform(1e-4, 1e-3) * si::ohm;
        if (weird_ && chance(0.1)) bow.mated = false;
        bank_.connectors.push_back(bow);
        cable("CB.load", "bow+");
        cable("bow-", minus);
        Motor motor;
        motor.id = "troll";
        motor.voltage = 12.0 * series_ * si::volt;
        motor.current = uniform(10.0, 60.0) * si::ampere;
        if (chance(0.5)) motor.winding = uniform(0.0, 0.03) * si::ohm;
        if (chance(0.6)) motor.throttle = Throttle::of(unit());
        if (chance(0.2)) motor.control = SpeedControl::direct;
        bank_.motors.push_back(motor);
        cable("bow.plug+", "troll+");
        cable("troll-", "bow.plug-");
    }

    void house_loads(std::string const& plus, std::string const& minus) {
        int const loads = between(0, 3);
        for (int n = 0; n < loads; ++n) {
            Load load;
            load.id = "load" + std::to_string(n);
            double const volts = 12.0 * series_;
            switch (between(0, 2)) {
            case 0:
                load.current = uniform(0.1, 10.0) * si::ampere;
                break;
            case 1:
                load.power = uniform(0.1, 5.0) * volts * si::watt;
                break;
            default:
                load.resistance = volts / uniform(0.1, 10.0) * si::ohm;
                break;
            }
            bank_.loads.push_back(load);
            auto const fuse = "F" + std::to_string(n);
            bank_.fuses.push_back(device(fuse));
            cable(chance(0.3) ? battery(0, 0) + "+" : plus, fuse + ".line"); // sometimes from the first battery alone
            cable(fuse + ".load", load.id + "+");
            cable(load.id + "-", chance(0.3) ? battery(0, 0) + "-" : minus);
        }
        if (chance(0.3)) {
            Switch s;
            s.id = "SW";
            if (chance(0.5)) s.resistance = 1e-3 * si::ohm;
            if (chance(0.4)) s.closed = false;
            bank_.switches.push_back(s);
            cable(plus, "SW.1");
            cable("SW.2", bank_.loads.empty() ? "troll+" : "load0+");
        }
    }

    // Behind a relay and a selector, with a shunt in its negative.
    void metered_load(std::string const& plus, std::string const& minus) {
        if (!chance(0.3)) return;
        Relay relay;
        relay.id = "REL";
        relay.closed = chance(0.6);
        bank_.relays.push_back(relay);
        Selector selector;
        selector.id = "SEL";
        selector.position = static_cast<SelectorPosition>(between(0, 3));
        bank_.selectors.push_back(selector);
        Shunt shunt;
        shunt.id = "SH";
        if (chance(0.5)) {
            shunt.rating = 500.0 * si::ampere;
            shunt.drop = 0.05 * si::volt;
        } else {
            shunt.resistance = log_uniform(1e-4, 1e-3) * si::ohm;
        }
        bank_.shunts.push_back(shunt);
        Load load;
        load.id = "metered";
        load.current = uniform(0.1, 10.0) * si::ampere;
        bank_.loads.push_back(load);
        cable(plus, "SEL.1");
        cable(plus, "REL.1");
        cable("REL.2", "SEL.2");
        cable("SEL.common", "metered+");
        cable("metered-", "SH.1");
        cable("SH.2", minus);
    }

    // What nobody would want: reversed batteries, wires anywhere, a battery and a switch on their own, a lost wire.
    void oddities() {
        if (chance(0.3)) { // one battery the wrong way around: its two posts change places
            auto const turn = [](std::string& end) {
                if (end == "B0x0+") return void(end = "B0x0-");
                if (end == "B0x0-") end = "B0x0+";
            };
            for (auto& run : bank_.jumpers) {
                turn(run.from);
                turn(run.to);
            }
        }
        if (chance(0.4)) {
            auto const all = terminals_of(bank_);
            auto const pick = [&] {
                return all[static_cast<std::size_t>(between(0, static_cast<int>(all.size()) - 1))];
            };
            for (int n = between(1, 3); n > 0; --n) {
                jumper(pick(), pick());
                bank_.jumpers.back().conductor.resistance = log_uniform(1e-3, 1.0) * si::ohm;
            }
        }
        if (chance(0.3)) {
            Battery spare;
            spare.id = "spare";
            spare.voltage = 12.0 * si::volt;
            spare.emf = 12.5 * si::volt;
            spare.resistance = 5e-3 * si::ohm;
            bank_.batteries.insert(bank_.batteries.begin(), spare);
            if (chance(0.5)) jumper("spare+", "B0x0-");
        }
        if (chance(0.3))
            bank_.cables.erase(bank_.cables.begin() + between(0, static_cast<int>(bank_.cables.size()) - 1));
        if (chance(0.2) && !bank_.jumpers.empty())
            bank_.jumpers.erase(bank_.jumpers.begin() + between(0, static_cast<int>(bank_.jumpers.size()) - 1));
    }

    std::mt19937_64 engine_;
    bool weird_;
    bool metered_;
    int series_ = 1;
    int parallel_ = 1;
    int wires_ = 0;
    Bank bank_;
};

// A bank that a careful rigger could have wired.
inline Bank random_good_bank(std::uint64_t seed) { return RandomBank(seed, false).make(); }
// One that nobody should.
inline Bank random_weird_bank(std::uint64_t seed) { return RandomBank(seed, true).make(); }

} // namespace bankwright::support
