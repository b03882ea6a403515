#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/discharging_bank.hpp"
#include "bankwright/devices/battery_limits.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

// Third order with an embedded second for the error; the last slope of a step is the first of the next.
// Bogacki and Shampine, Applied Mathematics Letters 2 (1989) 321 [from memory].
class DischargeRun {
public:
    DischargeRun(Bank const& bank, DischargeOptions const& options)
        : bank_(bank), options_(options), state_(bank, without_chargers(options.moment)) {
        for (auto const& battery : bank.batteries)
            charge_.push_back(battery.charge.value_or(StateOfCharge::of(1.0)).value());
    }

    DischargeResult run() {
        if (!solve(charge_)) return finish(RunEnd::no_operating_point, "");
        record();
        if (!state_.draws()) return finish(RunEnd::nothing_drawn, "");
        // [s] a first guess, which the error control corrects: a third-order step goes as the cube root of what is
        // allowed.
        double step = 10.0 * std::cbrt(options_.tolerance / DischargeOptions{}.tolerance);
        while (!ended()) {
            auto const left = options_.longest.value() - time_;
            if (left <= 0.0) return finish(RunEnd::time, "");
            step = advance(std::min(step, left));
        }
        return finish(result_.end, std::move(result_.ended_by));
    }

private:
    using Charges = std::vector<double>;

    static Moment without_chargers(Moment moment) {
        moment.chargers = false;
        return moment;
    }

    bool solve(Charges const& charge) { return state_.solve(charge); }

    Charges slope() const {
        Charges rates(charge_.size());
        for (std::size_t b = 0; b < rates.size(); ++b)
            rates[b] = state_.charge_rate(b);
        return rates;
    }

    struct Step {
        bool solved = false;
        Charges charge;
        double error = 0.0;
    };

    // From charge_, whose moment is solved, h seconds on. Leaves the end's moment solved.
    Step step_by(double h, Charges const& k1) {
        auto const along = [&](std::vector<std::pair<double, Charges const*>> const& terms) {
            auto at = charge_;
            for (auto const& [share, slope] : terms)
                for (std::size_t b = 0; b < at.size(); ++b)
                    at[b] += h * share * (*slope)[b];
            return at;
        };
        Step step;
        if (!solve(along({{0.5, &k1}}))) return step;
        auto const k2 = slope();
        if (!solve(along({{0.75, &k2}}))) return step;
        auto const k3 = slope();
        step.charge = along({{2.0 / 9.0, &k1}, {1.0 / 3.0, &k2}, {4.0 / 9.0, &k3}});
        if (!solve(step.charge)) return step;
        auto const k4 = slope();
        for (std::size_t b = 0; b < charge_.size(); ++b)
            step.error =
                std::max(step.error, std::abs(h * (-5.0 / 72.0 * k1[b] + k2[b] / 12.0 + k3[b] / 9.0 - k4[b] / 8.0)));
        step.solved = true;
        return step;
    }

    // One step that is accurate enough, or as far as the event that ends the run. Returns the next step's length [s].
    double advance(double h) {
        auto const k1 = slope(); // the last moment solved is that of charge_
        for (;;) {
            auto step = step_by(h, k1);
            auto const crossed = !step.solved || event(step.charge).found;
            auto const fine = !step.solved || step.error <= options_.tolerance;
            if (!fine) {
                h *= std::clamp(0.9 * std::cbrt(options_.tolerance / step.error), 0.2, 0.9);
                continue;
            }
            if (crossed) {
                stop_at_event(h, k1);
                return h;
            }
            accept(h, std::move(step.charge));
            return h * std::clamp(0.9 * std::cbrt(options_.tolerance / std::max(step.error, 1e-300)), 0.2, 4.0);
        }
    }

    void accept(double h, Charges charge) {
        time_ += h;
        charge_ = std::move(charge);
        record();
    }

    // Halves the step until the event is pinned to a millisecond, then acts on it.
    void stop_at_event(double h, Charges const& k1) {
        constexpr double close_enough = 1e-3; // [s]
        double before = 0.0;
        double after = h;
        while (after - before > close_enough) {
            auto const middle = 0.5 * (before + after);
            auto const step = step_by(middle, k1);
            (step.solved && !event(step.charge).found ? before : after) = middle;
        }
        auto const at_event = step_by(after, k1);
        if (!at_event.solved) {
            auto last = step_by(before, k1);
            if (last.solved) accept(before, std::move(last.charge));
            result_.end = RunEnd::no_operating_point;
            ended_ = true;
            return;
        }
        auto const what = event(at_event.charge);
        accept(after, at_event.charge);
        bool const battery = what.end == RunEnd::battery_empty || what.end == RunEnd::battery_cutoff;
        if (battery && has_protective_disconnect(bank_.batteries[what.index])) {
            drop_out(what.index);
            return;
        }
        result_.end = what.end;
        result_.ended_by = battery ? bank_.batteries[what.index].id : state_.load_ids()[what.index];
        ended_ = true;
    }

    void drop_out(std::size_t battery) {
        result_.dropped_out.push_back({bank_.batteries[battery].id, time_ * si::second});
        state_.drop_out(battery);
        if (solve(charge_) && state_.draws()) {
            record();
            return;
        }
        result_.end = RunEnd::battery_cutoff;
        result_.ended_by = bank_.batteries[battery].id;
        ended_ = true;
    }

    struct Event {
        bool found = false;
        RunEnd end = RunEnd::time;
        std::size_t index = 0; // of the battery or load
    };

    // At the moment last solved, which is that of these charges.
    Event event(Charges const& charge) const {
        for (std::size_t b = 0; b < charge.size(); ++b) {
            if (state_.has_dropped_out(b)) continue;
            if (charge[b] <= 0.0) return {true, RunEnd::battery_empty, b};
            auto const cutoff = low_cutoff(bank_.batteries[b]);
            if (cutoff && state_.amperes(b) > 0.0 && state_.volts(b) <= cutoff->value())
                return {true, RunEnd::battery_cutoff, b};
        }
        for (std::size_t l = 0; l < state_.load_ids().size(); ++l)
            if (auto const least = least_volts(l); least > 0.0 && state_.load_volts(l) < least)
                return {true, RunEnd::load_cutoff, l};
        return {};
    }

    double least_volts(std::size_t load) const { // [V] motors come first, as in the network's parts
        auto const motors = bank_.motors.size();
        auto const& least = load < motors ? bank_.motors[load].min_voltage : bank_.loads[load - motors].min_voltage;
        return least ? least->value() : 0.0;
    }

    bool ended() const { return ended_; }

    void record() {
        DischargeSample sample;
        sample.time = time_ * si::second;
        for (std::size_t b = 0; b < charge_.size(); ++b) {
            sample.charge.push_back(StateOfCharge::of(std::max(0.0, charge_[b])));
            sample.current.push_back(state_.amperes(b) * si::ampere);
            sample.voltage.push_back(state_.volts(b) * si::volt);
        }
        result_.samples.push_back(std::move(sample));
    }

    DischargeResult finish(RunEnd end, std::string ended_by) {
        result_.end = end;
        result_.ended_by = std::move(ended_by);
        result_.runtime = time_ * si::second;
        return std::move(result_);
    }

    Bank const& bank_;
    DischargeOptions options_;
    DischargingBank state_;
    Charges charge_;
    double time_ = 0.0; // [s]
    bool ended_ = false;
    DischargeResult result_;
};

BANKWRIGHT_INLINE std::optional<std::string> missing_for_discharge(Bank const& bank) {
    for (auto const& battery : bank.batteries) {
        if (!battery.capacity) return "battery `" + battery.id + "` needs `capacity`";
        if (!battery.chemistry) return "battery `" + battery.id + "` needs `chemistry`";
    }
    return std::nullopt;
}

BANKWRIGHT_INLINE DischargeResult discharge(Bank const& bank, DischargeOptions const& options) {
    if (auto const missing = missing_for_discharge(bank)) throw std::invalid_argument(*missing);
    return DischargeRun(bank, options).run();
}

} // namespace bankwright
