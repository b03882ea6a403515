#pragma once

#include "bankwright/analyses/in_time/charge_course.hpp"
#include "bankwright/analyses/in_time/course_samples.hpp"
#include "bankwright/analyses/recharge.hpp"
#include "bankwright/devices/battery_acceptance.hpp"
#include "bankwright/devices/battery_limits.hpp"
#include "bankwright/devices/charger_limits.hpp"
#include "bankwright/network/option_limits.hpp"
#include "bankwright/network/to_branches.hpp"

#include <algorithm>
#include <cstddef>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

namespace internal {

inline Bank plugged_in(Bank bank, std::optional<StateOfCharge> charge) {
    for (auto& charger : bank.chargers)
        charger.connected = true;
    for (auto& battery : bank.batteries)
        if (charge) battery.charge = charge;
    return bank;
}

class RechargeRun {
public:
    RechargeRun(Bank const& bank, RechargeOptions const& options)
        : bank_(plugged_in(bank, options.charge)), options_(options),
          course_(bank_, at_rest(), options.tolerance, true) {
        result_.batteries.resize(bank.batteries.size());
    }

    RechargeResult run() {
        course_.tell_at_multiples_of(options_.every.value());
        result_.end = fill();
        result_.duration = course_.time() * si::second;
        result_.energy = internal::course_samples::energy_of(course_);
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b) {
            auto& battery = result_.batteries[b];
            battery.charge = StateOfCharge::of(std::clamp(course_.charge(b), 0.0, 1.0));
            if (battery.charge.value() < as_good_as_full) battery.full.reset();
        }
        return std::move(result_);
    }

private:
    static constexpr double as_good_as_full = 0.99;

    static Moment at_rest() {
        Moment moment;
        moment.loads = LoadsAre::at_rest;
        return moment;
    }

    RechargeEnd fill() {
        if (!course_.settle()) return RechargeEnd::nothing_charges;
        for (auto const& output : course_.state().outputs())
            result_.outputs.push_back({output.name, {}, {}, {}, {}});
        name_limits();
        note();
        if (!any_takes(0.0) && !any_is_drained()) return RechargeEnd::nothing_charges;
        for (;;) {
            if (auto const battery = over_voltage(); battery >= 0) {
                auto const b = static_cast<std::size_t>(battery);
                result_.dropped_out.push_back({bank_.batteries[b].id, course_.time() * si::second});
                course_.state().drop_out(b);
                if (!course_.settle()) return RechargeEnd::nothing_charges;
                note();
                continue;
            }
            if (auto const battery = spent(); battery >= 0) {
                result_.ended_by = bank_.batteries[static_cast<std::size_t>(battery)].id;
                return RechargeEnd::battery_empty;
            }
            if (is_over()) return all_full() ? RechargeEnd::full : RechargeEnd::not_all_full;
            auto const stages = limited();
            auto const is_event = [&] {
                return limited() != stages || is_over() || over_voltage() >= 0 || spent() >= 0;
            };
            auto const stop =
                course_.advance(options_.longest.value(), options_.samples_apart, is_event, [this] { note(); });
            if (stop == ChargeCourse::Stop::time) return RechargeEnd::time;
            if (stop == ChargeCourse::Stop::no_operating_point) return RechargeEnd::nothing_charges;
        }
    }

    int spent() const { return internal::course_samples::spent(course_, bank_); }

    void name_limits() {
        std::size_t at = 0;
        for (auto const& charger : bank_.chargers)
            for (int k = 0; k < charger.outputs.value_or(1) && at < result_.outputs.size(); ++k, ++at) {
                result_.outputs[at].holds = held_voltage(charger, temperature_of_batteries(bank_));
                result_.outputs[at].most = *charger.current;
            }
    }

    std::vector<bool> limited() const {
        std::vector<bool> limited;
        for (auto const& output : course_.state().outputs())
            limited.push_back(output.limited);
        return limited;
    }

    // Any battery takes more than this share of its tail current.
    bool any_takes(double share) const {
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b)
            if (-course_.state().amperes(b) >
                std::max(1e-6, share * tail_current(bank_.batteries[b], bank_.system.ambient).value()))
                return true;
        return false;
    }
    // By what should charge it.
    bool any_is_drained() const {
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b)
            if (internal::course_samples::gives_much(course_, bank_, b)) return true;
        return false;
    }

    // By then the charge is whole, unless it is cold, the voltage low, or another battery in the string full.
    bool is_over() const {
        auto const stages = limited();
        return std::find(stages.begin(), stages.end(), true) == stages.end() && !any_takes(1.0) && !any_is_drained();
    }

    bool all_full() const {
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b)
            if (course_.charge(b) < as_good_as_full) return false;
        return true;
    }

    // The battery whose protective disconnect opens, or -1. A millivolt is forgiven: a charger may hold that very
    // voltage.
    int over_voltage() const {
        constexpr double forgiven = 1e-3; // [V]
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b) {
            auto const& battery = bank_.batteries[b];
            if (course_.state().has_dropped_out(b) || !has_protective_disconnect(battery)) continue;
            auto const cutoff = high_cutoff(battery);
            if (cutoff && course_.state().amperes(b) < 0.0 && course_.state().volts(b) > cutoff->value() + forgiven)
                return static_cast<int>(b);
        }
        return -1;
    }

    void note() {
        auto const now = course_.time() * si::second;
        internal::course_samples::keep(result_.samples, course_, bank_.batteries.size(), true);
        auto const& state = course_.state();
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b) {
            auto& battery = result_.batteries[b];
            if (!battery.full && course_.charge(b) >= as_good_as_full) battery.full = now;
            battery.highest = std::max(battery.highest, Voltage(state.volts(b) * si::volt));
            battery.most = std::max(battery.most, Current(-state.amperes(b) * si::ampere));
        }
        auto const outputs = state.outputs();
        for (std::size_t k = 0; k < outputs.size(); ++k) {
            auto& stages = result_.outputs[k];
            if (!stages.bulk && !outputs[k].limited && outputs[k].amperes > 0.0) stages.bulk = now;
            stages.given = course_.output_coulombs(k) * si::coulomb;
        }
    }

    Bank bank_;
    RechargeOptions options_;
    ChargeCourse course_;
    RechargeResult result_;
};

} // namespace internal

BANKWRIGHT_INLINE std::optional<std::string> missing_for_recharge(Bank const& bank) {
    if (auto missing = missing_for_discharge(bank)) return missing;
    if (bank.chargers.empty()) return "the bank has no charger";
    for (auto const& charger : bank.chargers) {
        if (!charger.voltage) return "charger `" + charger.id + "` needs `voltage`";
        if (!charger.current) return "charger `" + charger.id + "` needs `current`";
    }
    return std::nullopt;
}

BANKWRIGHT_INLINE RechargeResult recharge(Bank const& bank, RechargeOptions const& options) {
    if (options.charge) refuse_if(charge_problem(*options.charge), "charge", *options.charge);
    refuse_if(time_problem(options.longest), "longest", options.longest);
    refuse_unfit_steps(options.tolerance, options.samples_apart, options.every);
    if (auto const missing = missing_for_recharge(bank)) throw std::invalid_argument(*missing);
    return internal::RechargeRun(bank, options).run();
}

} // namespace bankwright
