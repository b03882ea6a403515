// Every good bank from 1S1P to 4S4P, built from parts as a rigger would: nothing here knows of any rule.
#pragma once

#include "bankwright/bank/bank.hpp"

#include <string>
#include <vector>

namespace miswires {

using namespace bankwright;

enum class MainLeads { end, diagonal, star, cross_tied };

struct Shape {
    int series = 1;
    int parallel = 1;
    MainLeads main_leads = MainLeads::end;
    bool second_load = false;
    bool string_fuses = false;
    bool charger = false;
};

inline std::string describe(Shape const& s) {
    char const* names[] = {"end", "diagonal", "star", "cross-tied"};
    return std::to_string(s.series) + "S" + std::to_string(s.parallel) + "P " + names[static_cast<int>(s.main_leads)] +
           (s.second_load ? ", two loads" : "") + (s.string_fuses ? ", fuse a string" : "") +
           (s.charger ? ", a charger" : "");
}

class BankBuilder {
public:
    explicit BankBuilder(Shape shape) : shape_(shape) {}

    Bank build() {
        bank_.name = "invented: " + describe(shape_);
        bank_.system.voltage = 12.0 * shape_.series * si::volt;
        for (int s = 0; s < shape_.parallel; ++s)
            string(s);
        join_strings();
        feed_motor();
        if (shape_.second_load) feed_lamp();
        if (shape_.charger) land_charger();
        return bank_;
    }

private:
    static std::string battery(int string, int place) { // A1, A2 ... the place counts from the negative end
        return std::string(1, static_cast<char>('A' + string)) + std::to_string(place + 1);
    }
    std::string top(int s) const { return battery(s, shape_.series - 1) + "+"; }
    std::string bottom(int s) const { return battery(s, 0) + "-"; }
    std::string positive(int s) const { return shape_.string_fuses ? "F" + std::to_string(s + 1) + ".load" : top(s); }

    static Run run(std::string id, std::string from, std::string to, double milliohms, char const* color = nullptr) {
        Run r;
        r.conductor.id = std::move(id);
        r.conductor.resistance = milliohms * 1e-3 * si::ohm;
        if (color) r.conductor.color = color;
        r.from = std::move(from);
        r.to = std::move(to);
        return r;
    }

    void string(int s) {
        for (int k = 0; k < shape_.series; ++k) {
            Battery b;
            b.id = battery(s, k);
            b.chemistry = Chemistry::agm;
            b.voltage = 12.0 * si::volt;
            b.capacity = 100.0 * 3600.0 * si::coulomb;
            b.resistance = 4e-3 * si::ohm;
            bank_.batteries.push_back(b);
            if (k > 0) {
                auto const number = std::to_string(s + 1) + std::to_string(k);
                bank_.jumpers.push_back(run("J" + number, battery(s, k - 1) + "+", battery(s, k) + "-", 0.4));
            }
        }
        if (!shape_.string_fuses) return;
        auto const n = std::to_string(s + 1);
        bank_.fuses.push_back(device("F" + n, 80));
        bank_.jumpers.push_back(run("U" + n, top(s), "F" + n + ".line", 0.3, "red"));
    }

    void join_strings() {
        auto const last = shape_.parallel - 1;
        positive_end_ = positive(0);
        negative_end_ = bottom(shape_.main_leads == MainLeads::diagonal ? last : 0);
        if (shape_.main_leads == MainLeads::star && shape_.parallel > 1) {
            bank_.busbars.push_back(Busbar{"POS", 8, {}});
            bank_.busbars.push_back(Busbar{"NEG", 8, {}});
            for (int s = 0; s <= last; ++s) {
                bank_.jumpers.push_back(run("P" + std::to_string(s + 1), positive(s), "POS", 0.04, "red"));
                bank_.jumpers.push_back(run("N" + std::to_string(s + 1), bottom(s), "NEG", 0.04, "black"));
            }
            positive_end_ = "POS";
            negative_end_ = "NEG";
            return;
        }
        for (int s = 0; s < last; ++s) {
            auto const n = std::to_string(s + 1);
            bank_.jumpers.push_back(run("P" + n, positive(s), positive(s + 1), 0.04, "red"));
            bank_.jumpers.push_back(run("N" + n, bottom(s), bottom(s + 1), 0.04, "black"));
            for (int k = 0; shape_.main_leads == MainLeads::cross_tied && k + 1 < shape_.series; ++k)
                bank_.jumpers.push_back(
                    run("X" + n + std::to_string(k + 1), battery(s, k) + "+", battery(s + 1, k) + "+", 0.04));
        }
    }

    static ProtectiveDevice device(std::string id, double amperes) {
        ProtectiveDevice d;
        d.id = std::move(id);
        d.rating = amperes * si::ampere;
        d.resistance = 0.3e-3 * si::ohm;
        return d;
    }

    void feed_motor() {
        bank_.breakers.push_back(device("CB", 60));
        bank_.connectors.push_back(Connector{"bow", 60.0 * si::ampere, 0.2e-3 * si::ohm, {}});
        Motor m;
        m.id = "troll";
        m.voltage = bank_.system.voltage;
        m.current = 50.0 * si::ampere;
        bank_.motors.push_back(m);
        bank_.cables.push_back(run("feed", positive_end_, "CB.line", 0.2, "red"));
        bank_.cables.push_back(run("main", "CB.load", "bow+", 2, "red"));
        bank_.cables.push_back(run("return", "bow-", negative_end_, 2, "black"));
        bank_.cables.push_back(run("tail-p", "bow.plug+", "troll+", 0.3, "red"));
        bank_.cables.push_back(run("tail-n", "troll-", "bow.plug-", 0.3, "black"));
    }

    void feed_lamp() {
        bank_.fuses.push_back(device("FL", 5));
        Load lamp;
        lamp.id = "lamp";
        lamp.power = 20.0 * si::watt;
        bank_.loads.push_back(lamp);
        bank_.cables.push_back(run("lamp-feed", positive_end_, "FL.line", 1, "red"));
        bank_.cables.push_back(run("lamp-p", "FL.load", "lamp+", 5, "red"));
        bank_.cables.push_back(run("lamp-n", "lamp-", negative_end_, 5, "black"));
    }

    void land_charger() {
        bank_.fuses.push_back(device("FC", 15));
        Charger shore;
        shore.id = "shore";
        shore.voltage = 14.4 * shape_.series * si::volt;
        shore.current = 10.0 * si::ampere;
        bank_.chargers.push_back(shore);
        bank_.cables.push_back(run("charge-feed", positive_end_, "FC.line", 1, "red"));
        bank_.cables.push_back(run("charge-p", "FC.load", "shore.1+", 5, "red"));
        bank_.cables.push_back(run("charge-n", "shore.1-", negative_end_, 5, "black"));
    }

    Shape shape_;
    Bank bank_;
    std::string positive_end_;
    std::string negative_end_;
};

// 1S1P to 4S4P; a single string has neither main lead posts to choose from nor strings to fuse. Of each size one has a
// charger.
inline std::vector<Shape> all_shapes() {
    std::vector<Shape> shapes;
    for (int series = 1; series <= 4; ++series)
        for (int parallel = 1; parallel <= 4; ++parallel) {
            for (auto main_leads : {MainLeads::end, MainLeads::diagonal, MainLeads::star, MainLeads::cross_tied})
                for (bool two : {false, true})
                    for (bool fuses : {false, true}) {
                        if (parallel == 1 && (main_leads != MainLeads::end || fuses)) continue;
                        if (main_leads == MainLeads::cross_tied && series == 1) continue;
                        shapes.push_back({series, parallel, main_leads, two, fuses, false});
                    }
            shapes.push_back({series, parallel, MainLeads::end, false, false, true});
        }
    return shapes;
}

} // namespace miswires
