// A feeder drawn at random, and the bank that is that feeder: strings of batteries in parallel, a breaker, cables from
// station to station, at each of them loads and motors, and at the posts perhaps a charger. Resistances span four
// decades.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "reference/feeder.hpp"
#include "support/jon_boat.hpp"
#include "support/random_circuits.hpp"

#include <string>

namespace feeder {

namespace bw = bankwright;
using random_circuits::Dice;

enum class Made {
    at_random,
    to_work, // an operating point was chosen first; the batteries were made for it
    to_fail, // one load alone asks for more than the batteries could give through nothing but the way there
};

struct BankAndLine {
    bw::Bank bank;
    Line line;
    Made made = Made::at_random;
    double chosen_volts = 0.0;         // [V] to_work: an operating point's at the last station
    std::vector<std::string> stations; // a part there
};

class Draw {
public:
    explicit Draw(Dice& dice) : dice_(dice) {}

    BankAndLine bank(Made made) {
        one_ = {};
        one_.made = made;
        bool const works = made == Made::to_work, fails = made == Made::to_fail;
        draw_strings();
        stations(1 + dice_.below(3), works, fails);
        if (works) scale_to_chosen();
        write_bank();
        if (!fails && dice_.chance(0.3)) charger(works);
        return one_;
    }

private:
    double ohms() { return dice_.log_between(1e-4, 1.0); }

    // Strings in parallel between the same two posts: by Millman's theorem a source.
    void draw_strings() {
        double siemens = 0.0, amps = 0.0;
        int const parallel = 1 + dice_.below(3), series = 1 + dice_.below(4);
        strings_.assign(static_cast<std::size_t>(parallel), {});
        for (auto& string : strings_) {
            double volts = 0.0, total = 0.0;
            for (int n = 0; n < series; ++n) {
                string.emfs.push_back(dice_.between(10.5, 13.0));
                string.ohms.push_back(ohms());
                string.jumpers.push_back(ohms()); // the last is the lead to the post
                volts += string.emfs.back();
                total += string.ohms.back() + string.jumpers.back();
            }
            siemens += 1.0 / total;
            amps += volts / total;
        }
        one_.line.source = {amps / siemens, 1.0 / siemens, 0.0, 0.0};
    }

    void stations(int count, bool works, bool fails) {
        Line& line = one_.line;
        double way = line.source.ohms;
        for (int k = 0; k < count; ++k)
            line.stations.push_back({ohms()}), way += line.stations.back().ohms;
        double const volts = line.source.volts, most = volts * volts / (4.0 * way);
        for (auto& s : line.stations) {
            if (dice_.chance(0.6)) s.watts = most * dice_.log_between(1e-3, 1.0);
            if (dice_.chance(0.3)) s.amps = 0.2 * volts / way * dice_.unit();
            if (dice_.chance(0.3)) s.siemens = dice_.log_between(1e-3, 1.0) / way;
            if (dice_.chance(0.4)) motor(s, volts, way);
        }
        auto& last = line.stations.back();
        if (last.watts == 0.0) last.watts = most * dice_.log_between(1e-3, 2.0);
        if (fails) last.watts = most * (1.0 + dice_.log_between(1e-7, 1e2));
        if (works) one_.chosen_volts = volts * dice_.between(0.05, 0.999);
    }

    // `current` at the bank's voltage and full throttle is up to what a short would draw.
    void motor(Station& s, double volts, double way) {
        double const current = volts / way * dice_.log_between(1e-2, 1.0);
        if (dice_.chance(0.6)) s.winding = volts / current * dice_.between(0.01, 0.9);
        double const back = volts - current * s.winding;
        s.coefficient = current / (back * back);
        s.duty = dice_.chance(0.3) ? 1.0 : dice_.unit();
    }

    // The batteries that hold just the operating point chosen.
    void scale_to_chosen() {
        auto& source = one_.line.source;
        double const before = source.volts;
        source.volts += one_.line.lacks(one_.chosen_volts, 1.0);
        for (auto& string : strings_)
            for (double& emf : string.emfs)
                emf *= source.volts / before;
    }

    void write_bank() {
        using namespace bw;
        using support::plain_run;
        auto& bank = one_.bank;
        auto const id = [](std::size_t string, std::size_t n) {
            return "B" + std::to_string(string) + "-" + std::to_string(n);
        };
        auto const wire = [&](std::string const& from, std::string const& to, double r) {
            bank.cables.push_back(plain_run("w" + std::to_string(bank.cables.size()), from, to, r));
        };
        for (std::size_t s = 0; s < strings_.size(); ++s) {
            auto const& string = strings_[s];
            std::size_t const top = string.emfs.size() - 1;
            for (std::size_t n = 0; n <= top; ++n) {
                bank.batteries.push_back(support::plain_battery(id(s, n), string.emfs[n], string.ohms[n]));
                wire(id(s, n) + "+", n < top ? id(s, n + 1) + "-" : "CB.line", string.jumpers[n]);
            }
            if (s > 0) wire(id(0, 0) + "-", id(s, 0) + "-", 0.0);
        }
        auto breaker = support::named<ProtectiveDevice>("CB");
        double const of_breaker = 0.1 * one_.line.stations[0].ohms;
        breaker.resistance = of_breaker * si::ohm;
        bank.breakers = {breaker};
        std::string plus = "CB.load", minus = id(0, 0) + "-";
        for (std::size_t k = 0; k < one_.line.stations.size(); ++k) {
            auto const& s = one_.line.stations[k];
            double const way = s.ohms - (k == 0 ? of_breaker : 0.0), there = way * dice_.unit();
            std::string here;
            auto const land = [&](std::string const& part) {
                wire(here.empty() ? plus : here + "+", part + "+", here.empty() ? there : 0.0);
                wire(here.empty() ? minus : here + "-", part + "-", here.empty() ? way - there : 0.0);
                if (here.empty()) here = part;
            };
            auto const name = std::to_string(k);
            auto const load = [&](std::string const& what) -> Load& {
                bank.loads.push_back(support::named<Load>(what + name));
                land(what + name);
                return bank.loads.back();
            };
            if (s.watts > 0.0) load("watts").power = s.watts * si::watt;
            if (s.siemens > 0.0) load("ohms").resistance = 1.0 / s.siemens * si::ohm;
            if (s.coefficient > 0.0) write_motor(s, "motor" + name), land("motor" + name);
            if (s.amps > 0.0 || here.empty()) load("amps").current = s.amps * si::ampere;
            one_.stations.push_back(here);
            plus = here + "+", minus = here + "-";
        }
    }

    // A nameplate that says so: at 12 V of back voltage.
    void write_motor(Station const& s, std::string const& id) {
        using namespace bw;
        auto motor = support::named<Motor>(id);
        double const amps = s.coefficient * 12.0 * 12.0;
        motor.voltage = (12.0 + amps * s.winding) * si::volt;
        motor.current = amps * si::ampere;
        motor.winding = s.winding * si::ohm;
        motor.throttle = Throttle::of(s.duty);
        one_.bank.motors.push_back(motor);
    }

    // Across the posts. In a bank made to work it must not disturb the operating point chosen: it waits below it.
    void charger(bool works) {
        using namespace bw;
        auto& source = one_.line.source;
        double posts = source.volts;
        if (works) posts = source.held(0.0) > 0.0 ? 0.9 * at_posts() : 0.0;
        source.charger_volts = works ? posts : source.volts * dice_.between(0.6, 1.2);
        source.charger_amps = source.volts / source.ohms * dice_.log_between(1e-3, 0.3);
        auto charger = support::named<Charger>("charger");
        charger.voltage = source.charger_volts * si::volt;
        charger.current = source.charger_amps * si::ampere;
        charger.connected = true;
        one_.bank.chargers = {charger};
        one_.bank.cables.push_back(support::plain_run("c+", "charger.1+", "CB.line", 0.0));
        one_.bank.cables.push_back(support::plain_run("c-", "charger.1-", "B0-0-", 0.0));
    }

    double at_posts() const {
        Line still = one_.line; // a source that holds nothing lacks all that is there
        still.source = {};
        return still.lacks(one_.chosen_volts, 1.0);
    }

    struct Strings {
        std::vector<double> emfs, ohms, jumpers;
    };
    Dice& dice_;
    std::vector<Strings> strings_;
    BankAndLine one_;
};

} // namespace feeder
