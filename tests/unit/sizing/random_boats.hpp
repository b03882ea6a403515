// Boats at random, sound but for their sizes: strings, a breaker, a run of any length, a motor of any current.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/units/literals.hpp"

#include <random>
#include <string>

namespace boats {

using namespace bankwright;
using namespace bankwright::literals;

class RandomBoat {
public:
    explicit RandomBoat(unsigned seed) : random_(seed) {}

    Bank make() {
        series_ = below(4) + 1;
        auto const strings = below(3) + 1;
        bank_.system.voltage = 12.0 * series_ * si::volt;
        bank_.system.joint = 0.1_mohm;
        bank_.system.runtime = between(0.3, 3.0) * 3600.0 * si::second;
        auto const capacity = between(60.0, 200.0) * 3600.0 * si::coulomb;
        for (int s = 0; s < strings; ++s)
            for (int k = 0; k < series_; ++k) {
                Battery b;
                b.id = id(s, k);
                b.chemistry = Chemistry::agm;
                b.voltage = 12_V;
                b.capacity = capacity;
                b.mass = between(20.0, 30.0) * si::kilogram;
                bank_.batteries.push_back(b);
                if (k > 0) land(bank_.jumpers, "J" + id(s, k), id(s, k - 1) + "+", id(s, k) + "-", 0.3);
            }
        for (int s = 1; s < strings; ++s) {
            land(bank_.jumpers, "N" + std::to_string(s), id(s - 1, 0) + "-", id(s, 0) + "-", 0.4, "black");
            land(bank_.jumpers, "P" + std::to_string(s), top(s - 1), top(s), 0.4, "red");
        }
        auto const run = between(1.0, 8.0);
        land(bank_.cables, "feed", top(0), "CB.line", 0.15, "red");
        land(bank_.cables, "main", "CB.load", "M+", run, "red");
        land(bank_.cables, "return", "M-", id(strings - 1, 0) + "-", run, "black");
        ProtectiveDevice breaker;
        breaker.id = "CB";
        breaker.rating = 50_A;
        breaker.interrupts = 10_kA;
        breaker.voltage = 65_V;
        bank_.breakers = {breaker};
        Motor motor;
        motor.id = "M";
        motor.voltage = bank_.system.voltage;
        motor.current = between(10.0, 90.0) * si::ampere;
        bank_.motors = {motor};
        return bank_;
    }

private:
    int below(int n) { return static_cast<int>(random_() % static_cast<unsigned>(n)); }
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(random_()) / 4294967296.0;
    }
    static std::string id(int s, int k) { return std::string(1, static_cast<char>('A' + s)) + std::to_string(k + 1); }
    std::string top(int s) const { return id(s, series_ - 1) + "+"; }

    static void land(std::vector<Run>& runs, std::string name, std::string from, std::string to, double meters,
                     char const* color = nullptr) {
        Run run;
        run.conductor.id = std::move(name);
        run.conductor.size = Awg{6};
        run.conductor.length = meters * si::meter;
        run.conductor.insulation = 105_degC;
        if (color) run.conductor.color = color;
        run.from = std::move(from);
        run.to = std::move(to);
        runs.push_back(std::move(run));
    }

    std::mt19937 random_;
    int series_ = 1;
    Bank bank_;
};

} // namespace boats
