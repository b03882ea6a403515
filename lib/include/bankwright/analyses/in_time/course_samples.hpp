// Where does a course through time stand? As the samples and sums that an answer keeps of it.
#pragma once

#include "bankwright/analyses/course.hpp"
#include "bankwright/analyses/in_time/charge_course.hpp"
#include "bankwright/devices/battery_capacity.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace bankwright {

namespace internal::course_samples {

// Where a course stands, as a sample.
inline BatterySample sample_of(ChargeCourse const& course, std::size_t batteries) {
    BatterySample sample;
    sample.time = course.time() * si::second;
    sample.charge.reserve(batteries);
    sample.current.reserve(batteries);
    sample.voltage.reserve(batteries);
    for (std::size_t b = 0; b < batteries; ++b) {
        sample.charge.push_back(StateOfCharge::of(std::clamp(course.charge(b), 0.0, 1.0)));
        sample.current.push_back(course.state().amperes(b) * si::ampere);
        sample.voltage.push_back(course.state().volts(b) * si::volt);
    }
    return sample;
}

// Adds where a course stands. Beyond some ten megabytes every other one of those there are goes, the first stays;
// without `all` the first and the last stay.
inline void keep(std::vector<BatterySample>& samples, ChargeCourse const& course, std::size_t batteries, bool all) {
    auto const most = 4 + 400'000 / (batteries + 4);
    if (!all && samples.size() == 2) samples.pop_back();
    if (samples.size() >= most) {
        std::size_t kept = 0;
        for (std::size_t k = 0; k < samples.size(); k += 2, ++kept)
            if (k != kept) samples[kept] = std::move(samples[k]);
        samples.resize(kept);
    }
    samples.push_back(sample_of(course, batteries));
}

inline EnergySplit energy_of(ChargeCourse const& course) {
    auto const sums = course.joules();
    return {sums.given * si::joule, sums.battery_heat * si::joule, sums.wiring_heat * si::joule, sums.used * si::joule,
            sums.charged * si::joule};
}

// A battery gives much where nothing draws: around a loop.
inline bool gives_much(ChargeCourse const& course, Bank const& bank, std::size_t battery) {
    constexpr double five_hours = 5.0 * 3600.0; // [s] slower is how unlike batteries side by side find their level
    return course.state().amperes(battery) > bank.batteries[battery].capacity->value() / five_hours;
}

// The number of a battery that goes on giving much although it is empty, at the moment last solved. -1: there is none.
inline int spent(ChargeCourse const& course, Bank const& bank) {
    auto const& state = course.state();
    for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
        auto const none_at_hand = state.at_hand(b) <= -deep_charge(*bank.batteries[b].chemistry);
        if ((state.charge_solved(b) <= 0.0 || none_at_hand) && gives_much(course, bank, b)) return static_cast<int>(b);
    }
    return -1;
}

// What goes on for hours while the loads run: an alternator and solar panels give, converters take from one bank and
// give to the other, nothing is plugged in ashore, and no starter cranks.
inline Moment under_way(Moment moment) {
    moment.shore = false;
    moment.starters = false;
    return moment;
}

// A battery that is charged meanwhile takes what it accepts, and next to nothing once it is full.
inline bool is_charged_under_way(Bank const& bank, Moment const& moment) {
    if (!moment.chargers) return false;
    bool const by_converter = moment.converters && !bank.converters.empty();
    return by_converter || std::any_of(bank.chargers.begin(), bank.chargers.end(), [](Charger const& charger) {
               return is_on_board(charger) && charger.connected.value_or(false);
           });
}

} // namespace internal::course_samples

} // namespace bankwright
