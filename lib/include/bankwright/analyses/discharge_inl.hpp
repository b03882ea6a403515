#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/in_time/charge_course.hpp"
#include "bankwright/analyses/in_time/course_samples.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_limits.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_reversal.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"
#include "bankwright/network/option_limits.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

namespace internal {

class DischargeRun {
public:
    DischargeRun(Bank const& bank, DischargeOptions const& options)
        : bank_(bank), options_(options),
          course_(bank, internal::course_samples::under_way(options.moment), options.tolerance,
                  internal::course_samples::is_charged_under_way(bank, options.moment)) {}

    DischargeResult run() {
        course_.tell_at_multiples_of(options_.every.value());
        if (options_.duty.legs.empty())
            run_until(options_.longest.value(), true);
        else
            run_legs();
        result_.runtime = course_.time() * si::second;
        result_.energy = internal::course_samples::energy_of(course_);
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b)
            result_.given.push_back(course_.coulombs(b) * si::coulomb);
        if (options_.rest.value() > 0.0) rest();
        return std::move(result_);
    }

private:
    void run_legs() {
        bool drew = false;
        do {
            for (auto const& leg : options_.duty.legs) {
                auto moment = internal::course_samples::under_way(options_.moment);
                moment.throttle = leg.throttle;
                course_.state().change(moment);
                auto const until = std::min(course_.time() + leg.duration.value(), options_.longest.value());
                if (!run_until(until, false)) return;
                drew = drew || course_.state().draws();
                result_.legs_done += 1;
                if (course_.time() >= options_.longest.value() || result_.legs_done >= most_legs) return;
            }
        } while (options_.duty.repeat && drew);
        if (!drew) result_.end = RunEnd::nothing_drawn;
    }

    // On to `until` [s]. False: the run has ended before.
    bool run_until(double until, bool must_draw) {
        if (!course_.settle()) return end(RunEnd::no_operating_point);
        record();
        if (must_draw && !course_.state().draws()) return end(RunEnd::nothing_drawn);
        for (;;) {
            if (auto const now = event(); now.found) {
                if (!act_on(now, must_draw)) return false;
                continue;
            }
            // A cell that is driven backwards comes to its deepest within a few hundredths of a charge.
            auto const apart = options_.samples_apart * (reversed_.empty() ? 1.0 : 0.2);
            auto const stop = course_.advance(
                until, apart, [this] { return event().found; }, [this] { record(); });
            if (stop == ChargeCourse::Stop::time) return true;
            if (stop == ChargeCourse::Stop::no_operating_point) return end(RunEnd::no_operating_point);
        }
    }

    struct Event {
        bool found = false;
        RunEnd end = RunEnd::time;
        std::size_t index = 0; // of the battery or load
        bool reversal = false; // a weak cell turns, and the run goes on
    };

    // At the moment last solved.
    Event event() const {
        auto const& state = course_.state();
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b) {
            if (state.has_dropped_out(b)) continue;
            auto const& battery = bank_.batteries[b];
            if (state.charge_solved(b) <= 0.0 || state.at_hand(b) <= -deep_charge(*battery.chemistry))
                return {true, RunEnd::battery_empty, b};
            auto const cutoff = low_cutoff(battery);
            if (cutoff && state.amperes(b) > 0.0 && state.volts(b) <= cutoff->value()) {
                // Where its rating ends and no charge is at hand it is empty; else its resistance ends the run.
                auto const empty = !battery.low_cutoff && state.at_hand(b) < 0.0;
                return {true, empty ? RunEnd::battery_empty : RunEnd::battery_cutoff, b};
            }
            if (auto const cell = weak_cell_volts(b); cell <= 0.0) {
                // A protective disconnect watches every cell [common practice].
                if (has_protective_disconnect(bank_.batteries[b])) return {true, RunEnd::battery_cutoff, b};
                if (std::find(reversed_.begin(), reversed_.end(), b) == reversed_.end())
                    return {true, RunEnd::time, b, true};
            }
        }
        for (std::size_t l = 0; l < state.load_ids().size(); ++l)
            if (auto const least = least_volts(l); least > 0.0 && runs(l) && state.load_volts(l) < least)
                return {true, RunEnd::load_cutoff, l};
        return {};
    }

    double reserve_of(std::size_t b) const { // [1]
        auto const& asked = options_.reserve ? options_.reserve : bank_.system.reserve;
        return asked.value_or(usual_reserve(*bank_.batteries[b].chemistry)).value();
    }

    // [V] across one of its weak cells; infinite where it has none, or gives nothing.
    double weak_cell_volts(std::size_t b) const {
        auto const& state = course_.state();
        if (!has_weak_cell(bank_.batteries[b]) || state.has_dropped_out(b) || state.amperes(b) <= 0.0)
            return std::numeric_limits<double>::infinity();
        return weak_cell_voltage(bank_.batteries[b], StateOfCharge::of(std::clamp(state.at_hand(b), 0.0, 1.0)),
                                 state.amperes(b) * si::ampere, bank_.system.ambient)
            .value();
    }

    // A motor that lies still minds no voltage.
    bool runs(std::size_t load) const {
        return load >= bank_.motors.size() || course_.state().moment().throttle != Throttle::of(0.0);
    }

    double least_volts(std::size_t load) const { // [V] motors come first, as in the network's parts
        auto const motors = bank_.motors.size();
        auto const& least = load < motors ? bank_.motors[load].min_voltage : bank_.loads[load - motors].min_voltage;
        return least ? least->value() : 0.0;
    }

    // False: that ends the run. A battery that has dropped out does not, as long as the others feed the load.
    bool act_on(Event const& event, bool must_draw) {
        if (event.reversal) {
            reversed_.push_back(event.index);
            result_.reversed_cells.push_back({bank_.batteries[event.index].id, course_.time() * si::second});
            return course_.settle() || end(RunEnd::no_operating_point);
        }
        bool const battery = event.end == RunEnd::battery_empty || event.end == RunEnd::battery_cutoff;
        auto const& who = battery ? bank_.batteries[event.index].id : course_.state().load_ids()[event.index];
        constexpr double hardly_any = 0.02;
        result_.recovers =
            event.end == RunEnd::battery_empty && course_.state().charge_solved(event.index) > hardly_any;
        if (!battery || !has_protective_disconnect(bank_.batteries[event.index])) return end(event.end, who);
        result_.dropped_out.push_back({who, course_.time() * si::second});
        auto const drew = course_.state().draws();
        course_.state().drop_out(event.index);
        if (!course_.settle() || ((must_draw || drew) && !course_.state().draws()))
            return end(RunEnd::battery_cutoff, who);
        record();
        return true;
    }

    bool end(RunEnd why, std::string by = {}) {
        result_.end = why;
        result_.ended_by = std::move(by);
        return false;
    }

    void rest() {
        auto moment = internal::course_samples::under_way(options_.moment);
        moment.chargers = false;
        moment.loads = LoadsAre::at_rest;
        course_.state().change(moment);
        auto const until = course_.time() + options_.rest.value();
        auto const note = [this] {
            internal::course_samples::keep(result_.rest, course_, bank_.batteries.size(), options_.keep_samples);
        };
        if (!course_.settle()) return;
        note();
        auto const stop = course_.advance(
            until, 0.1 * options_.samples_apart, [this] { return spent() >= 0; }, note);
        if (auto const battery = spent(); stop == ChargeCourse::Stop::event && battery >= 0)
            result_.rest_ended_by = bank_.batteries[static_cast<std::size_t>(battery)].id;
    }

    int spent() const { return internal::course_samples::spent(course_, bank_); }

    // Between two moments that are told a charge goes all but straight.
    void note_reserve() {
        if (result_.to_reserve) return;
        auto const time = course_.time();
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b) {
            auto const now = course_.charge(b), reserve = reserve_of(b), before = before_.empty() ? now : before_[b];
            if (course_.state().has_dropped_out(b) || now > reserve) continue;
            auto const share = before > now ? std::clamp((before - reserve) / (before - now), 0.0, 1.0) : 1.0;
            auto const then = (time_before_ + share * (time - time_before_)) * si::second;
            result_.to_reserve = std::min(result_.to_reserve.value_or(then), then);
        }
        before_.resize(bank_.batteries.size());
        for (std::size_t b = 0; b < before_.size(); ++b)
            before_[b] = course_.charge(b);
        time_before_ = time;
    }

    void record() {
        note_reserve();
        for (std::size_t r = 0; r < reversed_.size(); ++r) {
            auto& deepest = result_.reversed_cells[r].deepest;
            deepest = std::min(deepest, weak_cell_volts(reversed_[r]) * si::volt);
        }
        internal::course_samples::keep(result_.samples, course_, bank_.batteries.size(), options_.keep_samples);
    }

    Bank const& bank_;
    DischargeOptions options_;
    ChargeCourse course_;
    DischargeResult result_;
    std::vector<double> before_;        // [1] charges at the moment told last
    double time_before_ = 0.0;          // [s] of that moment
    std::vector<std::size_t> reversed_; // batteries, as in reversed_cells
};

} // namespace internal

BANKWRIGHT_INLINE std::optional<std::string> missing_for_discharge(Bank const& bank) {
    // Each step solves for all of them at once, in the cube of how many there are.
    constexpr std::size_t most = 150;
    auto const powers =
        std::count_if(bank.loads.begin(), bank.loads.end(), [](Load const& l) { return l.power.has_value(); });
    auto const bent = bank.motors.size() + static_cast<std::size_t>(powers);
    if (bent > most)
        return "the bank needs " + std::to_string(most) + " motors and loads of constant power at most, not " +
               std::to_string(bent) + ",";
    for (auto const& battery : bank.batteries) {
        if (!battery.capacity) return "battery `" + battery.id + "` needs `capacity`";
        if (!battery.chemistry) return "battery `" + battery.id + "` needs `chemistry`";
    }
    return std::nullopt;
}

BANKWRIGHT_INLINE void refuse_unfit(DischargeOptions const& options) {
    refuse_unfit(options.moment);
    refuse_unfit(options.duty);
    refuse_if(time_problem(options.longest), "longest", options.longest);
    if (options.rest != Duration{}) refuse_if(time_problem(options.rest), "rest", options.rest);
    refuse_unfit_steps(options.tolerance, options.samples_apart, options.every);
}

BANKWRIGHT_INLINE DischargeResult discharge(Bank const& bank, DischargeOptions const& options) {
    refuse_unfit(options);
    if (auto const missing = missing_for_discharge(bank)) throw std::invalid_argument(*missing);
    return internal::DischargeRun(bank, options).run();
}

} // namespace bankwright
