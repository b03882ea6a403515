// Which values may an option have? Judged here alone, for every analysis and for whatever asks one.
//
// Each `..._problem` is the rest of a sentence that begins with the value, "is out of range; a throttle is 0 % to
// 100 %", and empty if the value may be asked for. What is no number, or infinite, is out of every range.
#pragma once

#include "bankwright/bank/duty.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/units/fractions.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"

#include <cstddef>
#include <limits>
#include <stdexcept>
#include <string>
#include <string_view>

namespace bankwright {

namespace option_limits {

inline constexpr std::size_t most_samples = 1'000'000'000;
inline constexpr std::size_t most_checked_samples = 1'000'000;
inline constexpr int most_threads = 1024;

constexpr bool is_within(double value, double least, double most) { return value >= least && value <= most; }

} // namespace option_limits

constexpr std::string_view throttle_problem(Throttle throttle) {
    return option_limits::is_within(throttle.value(), 0.0, 1.0) ? "" : "is out of range; a throttle is 0 % to 100 %";
}
constexpr std::string_view charge_problem(StateOfCharge charge) {
    return option_limits::is_within(charge.value(), 0.0, 1.0) ? "" : "is out of range; a charge is 0 % to 100 %";
}
constexpr std::string_view charge_within_problem(StateOfCharge within) {
    return option_limits::is_within(within.value(), 0.0, 1.0) ? "" : "is out of range; a share is 0 % to 100 %";
}
constexpr std::string_view spread_problem(Spread spread) {
    return option_limits::is_within(spread.value(), 0.0, 0.9) ? "" : "is out of range; a spread is 0 % to 90 %";
}
constexpr std::string_view of_reading_problem(Spread of_reading) {
    return option_limits::is_within(of_reading.value(), 0.0, 0.1)
               ? ""
               : "is out of range; a meter is off by 0 % to 10 % of what it shows";
}
constexpr std::string_view digits_problem(int digits) {
    return digits >= 0 && digits <= 100 ? "" : "is out of range; a meter is off by 0 to 100 digits";
}
inline std::string_view load_current_problem(Current current) {
    if (current.value() < 0.0) return "is negative; a load draws 0 A or more";
    return option_limits::is_within(current.value(), 0.0, 1e6) ? "" : "is out of range; a load draws 0 A to 1 MA";
}
inline std::string_view time_problem(Duration time) {
    if (!(time.value() > 0.0)) return "must be above 0";
    return time.value() <= std::numeric_limits<double>::max() ? "" : "has no end";
}
inline std::string_view resolution_problem(Voltage digit) {
    return digit.value() > 0.0 && digit.value() <= 10.0 ? "" : "is out of range; above 0 V, to 10 V";
}
inline std::string_view digit_problem(Voltage digit) {
    return digit.value() > 0.0 && digit.value() <= 1000.0 ? "" : "is out of range; above 0 V, to 1 kV";
}
inline std::string_view digit_problem(Current digit) {
    return digit.value() > 0.0 && digit.value() <= 1e6 ? "" : "is out of range; above 0 A, to 1 MA";
}
inline std::string_view shown_volts_problem(Voltage shown) {
    return option_limits::is_within(shown.value(), -1000.0, 1000.0) ? "" : "is out of range; -1 kV to 1 kV";
}
inline std::string_view shown_amperes_problem(Current shown) {
    return option_limits::is_within(shown.value(), -1e6, 1e6) ? "" : "is out of range; -1 MA to 1 MA";
}
inline std::string_view ambient_problem(Temperature ambient) {
    return option_limits::is_within(ambient.value(), 273.15 - 60.0, 273.15 + 100.0)
               ? ""
               : "is out of range; -60 degC to 100 degC";
}

// Throws std::invalid_argument, "throttle: `150 %` is out of range; ...", if there is a problem.
inline void refuse_if(std::string_view problem, std::string_view option, std::string const& found) {
    if (!problem.empty())
        throw std::invalid_argument(std::string(option) + ": `" + found + "` " + std::string(problem));
}
template <Readable Q>
void refuse_if(std::string_view problem, std::string_view option, Q const& found) {
    if (!problem.empty()) refuse_if(problem, option, print(found));
}

inline void refuse_unfit(Moment const& moment) {
    if (moment.throttle) refuse_if(throttle_problem(*moment.throttle), "throttle", *moment.throttle);
    if (moment.loads == LoadsAre::constant_current)
        refuse_if(load_current_problem(moment.current), "current", moment.current);
}

inline void refuse_unfit(Duty const& duty) {
    for (auto const& leg : duty.legs) {
        refuse_if(throttle_problem(leg.throttle), "throttle of a leg", leg.throttle);
        refuse_if(time_problem(leg.duration), "duration of a leg", leg.duration);
    }
}

// Of samples: how many.
inline void refuse_unfit_samples(std::size_t samples, std::size_t least, std::size_t most) {
    if (samples < least || samples > most)
        refuse_if("is out of range; " + std::to_string(least) + " to " + std::to_string(most), "samples",
                  std::to_string(samples));
}

inline void refuse_unfit_threads(int threads) {
    if (threads < 1 || threads > option_limits::most_threads)
        refuse_if("is out of range; 1 to " + std::to_string(option_limits::most_threads), "threads",
                  std::to_string(threads));
}

// For numbers that no unit goes with: a share of a step, a count.
inline void refuse_unless(bool fits, std::string_view option, double found, std::string_view allowed) {
    if (!fits) refuse_if("is out of range; " + std::string(allowed), option, std::to_string(found));
}

// How closely a run through time is followed, and how often it is told of.
inline void refuse_unfit_steps(double tolerance, double samples_apart, Duration every) {
    refuse_unless(tolerance > 0.0 && tolerance <= 0.1, "tolerance", tolerance, "above 0, to 0.1");
    refuse_unless(samples_apart > 0.0, "samples_apart", samples_apart, "above 0");
    if (every != Duration{}) refuse_if(time_problem(every), "every", every);
}

} // namespace bankwright
