#pragma once

#include "bankwright/analyses/charge_course.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE ChargeCourse::ChargeCourse(Bank const& bank, Moment const& moment, double tolerance, bool charging)
    : batteries_(bank.batteries.size()), state_(bank, moment, charging), tolerance_(tolerance) {
    for (auto const& battery : bank.batteries)
        values_.push_back(battery.charge.value_or(StateOfCharge::of(1.0)).value());
    values_.resize(2 * batteries_ + power_count + state_.output_count(), 0.0);
}

BANKWRIGHT_INLINE bool ChargeCourse::settle() {
    // [s] a first guess, which the error control corrects: a third-order step goes as the cube root of what is allowed.
    constexpr double usual_tolerance = 1e-8;
    step_ = 10.0 * std::cbrt(tolerance_ / usual_tolerance);
    return state_.solve(values_);
}

BANKWRIGHT_INLINE PowerSplit ChargeCourse::joules() const {
    auto const* const sums = values_.data() + 2 * batteries_;
    return {sums[0], sums[1], sums[2], sums[3], sums[4]};
}

BANKWRIGHT_INLINE ChargeCourse::Charges ChargeCourse::rates() const {
    Charges rates;
    rates.reserve(values_.size());
    for (std::size_t b = 0; b < batteries_; ++b)
        rates.push_back(state_.charge_rate(b));
    for (std::size_t b = 0; b < batteries_; ++b)
        rates.push_back(state_.amperes(b));
    auto const powers = state_.powers();
    for (auto const watts : {powers.given, powers.battery_heat, powers.wiring_heat, powers.used, powers.charged})
        rates.push_back(watts);
    for (auto const& output : state_.outputs())
        rates.push_back(output.amperes);
    rates.resize(values_.size(), 0.0); // the chargers that a moment leaves out
    return rates;
}

// h seconds on from where it stands. Leaves the end's moment solved.
BANKWRIGHT_INLINE ChargeCourse::Step ChargeCourse::step_by(double h, Charges const& k1) {
    auto const along = [&](std::initializer_list<std::pair<double, Charges const*>> terms) {
        auto at = values_;
        for (auto const& [share, slope] : terms)
            for (std::size_t i = 0; i < at.size(); ++i)
                at[i] += h * share * (*slope)[i];
        return at;
    };
    Step step;
    if (!state_.solve(along({{0.5, &k1}}))) return step;
    auto const k2 = rates();
    if (!state_.solve(along({{0.75, &k2}}))) return step;
    auto const k3 = rates();
    step.values = along({{2.0 / 9.0, &k1}, {1.0 / 3.0, &k2}, {4.0 / 9.0, &k3}});
    if (!state_.solve(step.values)) return step;
    auto const k4 = rates();
    for (std::size_t b = 0; b < batteries_; ++b)
        step.error =
            std::max(step.error, std::abs(h * (-5.0 / 72.0 * k1[b] + k2[b] / 12.0 + k3[b] / 9.0 - k4[b] / 8.0)));
    step.solved = true;
    return step;
}

BANKWRIGHT_INLINE void ChargeCourse::take(double h, Charges values) {
    time_ += h;
    values_ = std::move(values);
}

BANKWRIGHT_INLINE ChargeCourse::Stop ChargeCourse::advance(double until, std::function<bool()> const& is_event,
                                                           std::function<void()> const& on_step) {
    auto k1 = rates();
    while (time_ < until) {
        auto const left = until - time_;
        bool const last = step_ >= left;
        auto const h = last ? left : step_;
        auto step = step_by(h, k1);
        auto const growth = 0.9 * std::cbrt(tolerance_ / std::max(step.error, 1e-300));
        if (step.solved && step.error > tolerance_) {
            step_ = h * std::clamp(growth, 0.2, 0.9);
            continue;
        }
        if (!step.solved || is_event()) {
            auto const stop = stop_inside(h, k1, is_event);
            on_step();
            return stop;
        }
        take(h, std::move(step.values));
        if (last) time_ = until;
        on_step();
        if (!last || growth < 1.0) step_ = h * std::clamp(growth, 0.2, 4.0);
        k1 = rates();
    }
    return Stop::time;
}

// Halves the step until the event is pinned, and goes just past it; up to where there still is an operating point.
BANKWRIGHT_INLINE ChargeCourse::Stop ChargeCourse::stop_inside(double h, Charges const& k1,
                                                               std::function<bool()> const& is_event) {
    constexpr double close_enough = 1e-3; // [s]
    double before = 0.0;
    double after = h;
    while (after - before > close_enough) {
        auto const middle = 0.5 * (before + after);
        auto const step = step_by(middle, k1);
        (step.solved && !is_event() ? before : after) = middle;
    }
    auto past = step_by(after, k1);
    bool const solved = past.solved;
    if (!solved) past = step_by(before, k1);
    take(solved ? after : before, std::move(past.values));
    return solved ? Stop::event : Stop::no_operating_point;
}

} // namespace bankwright
