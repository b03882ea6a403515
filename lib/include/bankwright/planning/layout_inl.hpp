#pragma once

#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/charger_limits.hpp"
#include "bankwright/planning/layout.hpp"
#include "bankwright/units/literals.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::layout {

// Lengths within the battery box and on the bow, to be measured before anything is cut: common practice, no source. A
// device stands within the 7 in of 33 CFR 183.455(b).
inline Length inches(unsigned long long count) { return literals::operator""_in(count); } // exactly as it is written
inline Length between_posts() { return inches(12); }
inline Length between_strings() { return inches(16); }
inline Length to_device() { return inches(5); }
inline Length to_busbar() { return inches(24); }
inline Length within_box() { return inches(12); }
inline Length on_bow() { return inches(6); }
inline Length motor_tail() { return inches(36); }
inline Length to_charger() { return inches(48); }

class Builder {
public:
    Builder(Wish const& wish, Layout const& layout) : wish_(wish), layout_(layout) {}

    Bank build() {
        system();
        batteries();
        join_strings();
        auto const end = main_device();
        if (layout_.charger_fuse) charger();
        motor(end);
        return std::move(bank_);
    }

private:
    std::string battery_id(int string, int place) const {
        if (layout_.strings == 1) return std::string(1, static_cast<char>('A' + place));
        return fmt::format("{}{}", static_cast<char>('A' + string), place + 1);
    }
    std::string bottom(int string) const { return battery_id(string, 0) + "-"; }
    std::string top(int string) const { return battery_id(string, layout_.series - 1) + "+"; }

    Run run(std::string id, std::string from, std::string to, WireSize size, Length length,
            char const* color = nullptr) {
        Run made;
        made.conductor.id = std::move(id);
        made.conductor.size = size;
        made.conductor.length = length;
        made.conductor.insulation = layout_.wire.insulation;
        made.conductor.tinned = layout_.wire.tinned;
        if (color) made.conductor.color = color;
        made.from = std::move(from);
        made.to = std::move(to);
        return made;
    }
    void jumper(std::string id, std::string from, std::string to, Length length, char const* color = nullptr) {
        bank_.jumpers.push_back(run(std::move(id), std::move(from), std::move(to), layout_.main, length, color));
    }
    void cable(std::string id, std::string from, std::string to, Length length, char const* color) {
        bank_.cables.push_back(run(std::move(id), std::move(from), std::move(to), layout_.main, length, color));
    }
    void tail(std::string id, std::string from, std::string to, Length length, char const* color) {
        bank_.cables.push_back(run(std::move(id), std::move(from), std::move(to), layout_.tail, length, color));
        bank_.cables.back().conductor.fixed = true;
    }
    template <class Part>
    static Part named(Part part, std::string id) {
        part.id = std::move(id);
        return part;
    }

    void system() {
        auto const motor = motor_current(wish_);
        bank_.name = fmt::format("a bank of {} for a motor of {}", print(wish_.system), print(motor));
        bank_.system.voltage = wish_.system;
        bank_.system.runtime = wish_.runtime;
        bank_.system.joint = layout_.joint;
        bank_.system.drop = wish_.drop;
        if (!wish_.stock.empty()) bank_.system.stock = wish_.stock;
    }

    void batteries() {
        for (int s = 0; s < layout_.strings; ++s)
            for (int k = 0; k < layout_.series; ++k) {
                bank_.batteries.push_back(named(layout_.battery, battery_id(s, k)));
                if (k == 0) continue;
                auto const id =
                    layout_.strings == 1 ? fmt::format("J{}", k) : fmt::format("J{}{}", static_cast<char>('A' + s), k);
                jumper(id, battery_id(s, k - 1) + "+", battery_id(s, k) + "-", between_posts());
            }
    }

    void join_strings() {
        positive_ = top(layout_.strings - 1); // diagonally opposite
        negative_ = bottom(0);
        if (layout_.strings == 1) return;
        if (!layout_.string_fuse) {
            for (int s = 1; s < layout_.strings; ++s) {
                auto const number = layout_.strings == 2 ? std::string() : std::to_string(s);
                jumper("link-n" + number, bottom(s - 1), bottom(s), between_strings(), "black");
                jumper("link-p" + number, top(s - 1), top(s), between_strings(), "red");
            }
            return;
        }
        positive_ = "plus";
        negative_ = "minus";
        for (auto const& id : {positive_, negative_})
            bank_.busbars.push_back(named(layout_.busbar.value_or(Busbar{}), id));
        for (int s = 0; s < layout_.strings; ++s) {
            auto const letter = static_cast<char>('a' + s);
            auto const fuse = fmt::format("F{}", static_cast<char>('A' + s));
            bank_.fuses.push_back(named(*layout_.string_fuse, fuse));
            cable(fmt::format("{}-f", letter), top(s), fuse + ".line", to_device(), "red");
            cable(fmt::format("{}-p", letter), fuse + ".load", positive_, to_busbar(), "red");
            cable(fmt::format("{}-n", letter), bottom(s), negative_, to_busbar(), "black");
        }
    }

    // Where the positive goes on.
    std::string main_device() {
        std::string const id = layout_.device_is_fuse ? "F1" : "CB";
        (layout_.device_is_fuse ? bank_.fuses : bank_.breakers).push_back(named(layout_.device, id));
        cable("feed", positive_, id + ".line", to_device(), "red");
        if (!layout_.disconnect) return id + ".load";
        bank_.switches.push_back(named(*layout_.disconnect, "off"));
        cable("to-off", id + ".load", "off.1", within_box(), "red");
        return "off.2";
    }

    void charger() {
        Charger made;
        made.id = "shore";
        made.voltage = charging_voltage(layout_.battery, layout_.series);
        made.current = wish_.charger;
        made.connected = false;
        bank_.chargers.push_back(made);
        bank_.fuses.push_back(named(*layout_.charger_fuse, "F2"));
        auto const lead = [&](std::string id, std::string from, std::string to, Length length, char const* color) {
            bank_.cables.push_back(
                run(std::move(id), std::move(from), std::move(to), layout_.charger_lead, length, color));
        };
        lead("charge-f", positive_, "F2.line", to_device(), "red");
        lead("charge-p", "F2.load", "shore.1+", to_charger(), "red");
        lead("charge-n", "shore.1-", negative_, to_charger(), "black");
    }

    void motor(std::string const& live) {
        Motor made;
        made.id = "motor";
        made.voltage = wish_.system;
        made.current = motor_current(wish_);
        made.throttle = wish_.throttle;
        made.thrust = wish_.thrust;
        bank_.motors.push_back(made);
        if (!layout_.receptacle) {
            cable("main", live, "motor+", wish_.run, "red");
            cable("return", "motor-", negative_, wish_.run, "black");
            return;
        }
        bank_.connectors.push_back(named(*layout_.receptacle, "bow"));
        if (layout_.studs_on_bow) {
            for (auto const* id : {"bow-p", "bow-n"})
                bank_.busbars.push_back(named(layout_.busbar.value_or(Busbar{}), id));
            cable("main", live, "bow-p", wish_.run, "red");
            cable("return", "bow-n", negative_, wish_.run, "black");
            tail("stub-p", "bow-p", "bow+", on_bow(), "red");
            tail("stub-n", "bow-", "bow-n", on_bow(), "black");
        } else {
            cable("main", live, "bow+", wish_.run, "red");
            cable("return", "bow-", negative_, wish_.run, "black");
        }
        tail("tail-p", "bow.plug+", "motor+", motor_tail(), "red");
        tail("tail-n", "motor-", "bow.plug-", motor_tail(), "black");
    }

    Wish const& wish_;
    Layout const& layout_;
    Bank bank_;
    std::string positive_; // where the main leads leave the bank
    std::string negative_;
};

} // namespace internal::layout

BANKWRIGHT_INLINE Bank lay_out(Wish const& wish, Layout const& layout) {
    return internal::layout::Builder(wish, layout).build();
}

BANKWRIGHT_INLINE Voltage charging_voltage(Battery const& battery, int series) {
    auto const chemistry = battery.chemistry.value_or(Chemistry::flooded);
    auto const cells = cell_count(battery) * series;
    auto const stages = charge_stages(chemistry, cells);
    auto volts = 0.5 * (stages.absorption_low.value() + stages.absorption_high.value());
    if (battery.high_cutoff) volts = std::min(volts, battery.high_cutoff->value() * series);
    return std::round(10.0 * volts) / 10.0 * si::volt;
}

} // namespace bankwright
