#pragma once

#include "bankwright/analyses/in_time/charge_course.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE ChargeCourse::ChargeCourse(Bank const& bank, Moment const& moment, double tolerance, bool charging)
    : batteries_(bank.batteries.size()), state_(bank, moment, charging), tolerance_(tolerance), charges_(batteries_),
      flows_(batteries_ + power_count + state_.output_count()), on_the_way_(rows_of_batteries(bank)) {
    for (std::size_t b = 0; b < batteries_; ++b)
        charges_.now()[b] = bank.batteries[b].charge.value_or(StateOfCharge::of(1.0)).value();
}

BANKWRIGHT_INLINE bool ChargeCourse::settle() {
    step_ = 0.0;
    return state_.solve(charges_.now());
}

BANKWRIGHT_INLINE PowerSplit ChargeCourse::joules() const {
    auto const* const sums = flows_.now() + batteries_;
    return {sums[0], sums[1], sums[2], sums[3], sums[4]};
}

// Over which the fastest charge moves by a hundredth, more or less as the tolerance is wide or narrow. The error
// control corrects it.
BANKWRIGHT_INLINE double ChargeCourse::first_step() const {
    constexpr double usual_tolerance = 1e-9;
    double fastest = 1e-12; // [1/s]
    for (std::size_t b = 0; b < batteries_; ++b)
        fastest = std::max(fastest, std::abs(charges_.slope(0)[b]));
    return 0.01 / fastest * std::pow(tolerance_ / usual_tolerance, 1.0 / numeric::dormand_prince::order);
}

// Of the moment last solved.
BANKWRIGHT_INLINE void ChargeCourse::find_slope(std::size_t number) {
    std::copy_n(state_.charge_rates(), batteries_, charges_.slope(number));
    if (number == 1) return; // it has no part in what a step brings
    auto* slope = flows_.slope(number);
    for (std::size_t b = 0; b < batteries_; ++b)
        *slope++ = state_.amperes(b);
    auto const powers = state_.powers();
    for (auto const watts : {powers.given, powers.battery_heat, powers.wiring_heat, powers.used, powers.charged})
        *slope++ = watts;
    auto const outputs = state_.outputs(); // none of the chargers that a moment leaves out
    std::fill(slope, flows_.slope(number) + flows_.count(), 0.0);
    for (auto const& output : outputs)
        *slope++ = output.amperes;
}

BANKWRIGHT_INLINE void ChargeCourse::go_to(double h, Shares const& shares) {
    charges_.go(h, shares, shares.size(), charges_.now());
    flows_.go(h, shares, shares.size(), flows_.now());
}

// Of a step of h seconds from where it stands, whose first slope is there. Leaves the end's moment solved.
BANKWRIGHT_INLINE bool ChargeCourse::find_slopes(double h) {
    for (std::size_t k = 1; k < numeric::dormand_prince::slopes; ++k) {
        charges_.go(h, numeric::dormand_prince::to_slope[k], k, on_the_way_.data());
        if (!state_.solve(on_the_way_.data())) return false;
        find_slope(k);
    }
    return true;
}

BANKWRIGHT_INLINE double ChargeCourse::error(double h) const {
    double largest = 0.0;
    for (std::size_t b = 0; b < batteries_; ++b) {
        double sum = 0.0;
        for (std::size_t k = 0; k < numeric::dormand_prince::slopes; ++k)
            sum += numeric::dormand_prince::error[k] * charges_.slope(k)[b];
        largest = std::max(largest, std::abs(h * sum));
    }
    return largest;
}

BANKWRIGHT_INLINE double ChargeCourse::next_goal(double until) const {
    if (!(every_ > 0.0)) return until;
    auto const next = every_ * (std::floor(time_ / every_) + 1.0);
    return next - time_ > 1e-9 * every_ ? std::min(next, until) : std::min(next + every_, until);
}

BANKWRIGHT_INLINE ChargeCourse::Stop ChargeCourse::advance(double until, double apart,
                                                           std::function<bool()> const& is_event,
                                                           std::function<void()> const& on_moment) {
    charges_.start_here();
    flows_.start_here();
    start_time_ = time_;
    find_slope(0);
    if (step_ <= 0.0) step_ = first_step();
    while (time_ < until) {
        auto const goal = next_goal(until);
        auto const left = goal - time_;
        bool const last = step_ >= left;
        auto const found = try_step(last ? left : step_, !last, is_event);
        if (!found) continue;
        auto const taken = go_through(*found, apart, is_event, on_moment);
        if (last && !taken.stop) time_ = goal;
        on_moment();
        if (taken.stop) return *taken.stop;
        charges_.start_next();
        flows_.start_next();
        start_time_ = time_;
    }
    return Stop::time;
}

// Nothing if a shorter step_ is to be tried. Leaves the end's moment solved.
BANKWRIGHT_INLINE std::optional<ChargeCourse::Step> ChargeCourse::try_step(double h, bool may_grow,
                                                                           std::function<bool()> const& is_event) {
    constexpr double trusted = 1.0; // [s] a step on whose way there is no answer must be this short to be believed
    if (!find_slopes(h)) {
        if (h <= trusted) return pin(h, is_event);
        step_ = 0.25 * h;
        return std::nullopt;
    }
    auto const missed = error(h);
    auto const growth = 0.9 * std::pow(tolerance_ / std::max(missed, 1e-300), 1.0 / numeric::dormand_prince::order);
    if (missed > tolerance_) {
        step_ = h * std::max(growth, 0.1);
        return std::nullopt;
    }
    if (may_grow || growth < 1.0) step_ = h * std::min(growth, 10.0);
    if (is_event()) return pin(h, is_event);
    return Step{h, {}};
}

// Halves a step at whose end there is an event, or no answer on the way there, until that is pinned, and goes just past
// it; up to where there still is an answer.
BANKWRIGHT_INLINE ChargeCourse::Step ChargeCourse::pin(double h, std::function<bool()> const& is_event) {
    constexpr double close_enough = 1e-3; // [s]
    double before = 0.0;
    double after = h;
    while (after - before > close_enough) {
        auto const middle = 0.5 * (before + after);
        (find_slopes(middle) && !is_event() ? before : after) = middle;
    }
    if (find_slopes(after)) return {after, Stop::event};
    find_slopes(before);
    return {before, Stop::no_operating_point};
}

BANKWRIGHT_INLINE bool ChargeCourse::stand_inside(double h, double part) {
    go_to(h, numeric::dormand_prince::inside(part));
    time_ = start_time_ + part * h;
    return state_.solve(charges_.now());
}

// From moment to moment to the step's end, or to an event that comes and goes before it. Leaves that moment solved.
BANKWRIGHT_INLINE ChargeCourse::Step ChargeCourse::go_through(Step step, double apart,
                                                              std::function<bool()> const& is_event,
                                                              std::function<void()> const& on_moment) {
    auto const stand_at_end = [&] {
        go_to(step.h, numeric::dormand_prince::to_slope.back());
        time_ = start_time_ + step.h;
    };
    stand_at_end();
    double moved = 0.0; // [1]
    for (std::size_t b = 0; b < batteries_; ++b)
        moved = std::max(moved, std::abs(charges_.now()[b] - charges_.start(b)));
    auto const pieces = std::ceil(moved / apart);
    if (!(pieces > 1.0)) return step;
    for (double piece = 1.0; piece < pieces; ++piece) {
        if (!stand_inside(step.h, piece / pieces)) continue;
        if (!step.stop && is_event()) {
            auto const h = step.h;
            if (find_slopes(h * piece / pieces) && is_event()) { // not only by what is told of the inside
                step = pin(h * piece / pieces, is_event);
                break;
            }
            find_slopes(h);
            stand_inside(h, piece / pieces);
        }
        on_moment();
    }
    stand_at_end();
    state_.solve(charges_.now());
    return step;
}

} // namespace bankwright
