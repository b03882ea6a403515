#pragma once

#include "bankwright/analyses/in_time/charge_course.hpp"
#include "bankwright/devices/battery_recovery.hpp"
#include "bankwright/numeric/rodas.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace bankwright {

BANKWRIGHT_INLINE ChargeCourse::ChargeCourse(Bank const& bank, Moment const& moment, double tolerance, bool charging)
    : batteries_(bank.batteries.size()), lags_(solver::padded(batteries_)), state_(bank, moment, charging),
      tolerance_(tolerance), charges_(lags_ + batteries_), flows_(batteries_ + power_count + state_.output_count()),
      on_the_way_(2 * internal::rows_of_batteries(bank)) {
    for (std::size_t b = 0; b < batteries_; ++b)
        charges_.now()[b] = bank.batteries[b].charge.value_or(StateOfCharge::of(1.0)).value();
}

BANKWRIGHT_INLINE bool ChargeCourse::settle() {
    step_ = 0.0;
    steps_ = 0;
    stiff_.reset();
    return state_.solve(charges_.now(), charges_.now() + lags_);
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
    for (std::size_t b = 0; b < charges_.count(); ++b)
        fastest = std::max(fastest, std::abs(charges_.slope(0)[b]));
    return 0.01 / fastest * std::pow(tolerance_ / usual_tolerance, 1.0 / numeric::dormand_prince::order);
}

// Of the moment last solved.
BANKWRIGHT_INLINE void ChargeCourse::find_slope(std::size_t number) {
    state_.rates(charges_.slope(number), charges_.slope(number) + lags_);
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
        if (!state_.solve(on_the_way_.data(), on_the_way_.data() + lags_)) return false;
        find_slope(k);
    }
    return true;
}

// The same by the rule that goes on now.
BANKWRIGHT_INLINE bool ChargeCourse::find_step(double h) {
    if (!stiff_) return find_slopes(h);
    if (!stiff_started_ && !stiff_->start(charges_.start())) return false;
    stiff_started_ = true;
    return stiff_->go(h) && state_.solve(stiff_->end(), stiff_->end() + lags_);
}

// A step is as long as the error allows, over which a charge moves by a hundredth or so, unless something that hardly
// moves holds it back.
BANKWRIGHT_INLINE bool ChargeCourse::creeps(double h) const {
    constexpr double hardly = 1e-4; // [1]
    double fastest = 0.0;           // [1/s]
    for (std::size_t b = 0; b < charges_.count(); ++b)
        fastest = std::max(fastest, std::abs(charges_.slope(0)[b]));
    return h * fastest < hardly;
}

// Of the moment last solved: all slopes, one after the other.
BANKWRIGHT_INLINE void ChargeCourse::copy_slopes(double* slopes) {
    constexpr std::size_t scratch = 2;
    find_slope(scratch);
    slopes = std::copy_n(charges_.slope(scratch), charges_.count(), slopes);
    std::copy_n(flows_.slope(scratch), flows_.count(), slopes);
}

// How all slopes follow each charge and lag. Currents and powers follow them smoothly, and so the network is asked a
// little beside; the rates follow the currents with corners, which a small battery's current reaches with the least
// change, so that they are told by their own slopes. The charges go down: a full battery's curve ends above.
BANKWRIGHT_INLINE bool ChargeCourse::find_derivative(double const* values, double* columns) {
    constexpr double reach = 1e-7; // [1]
    if (!state_.solve(values, values + lags_)) return false;
    auto const count = charges_.count(), all = count + flows_.count();
    std::vector<double> first(all), here(values, values + count);
    copy_slopes(first.data());
    std::vector<ChargeRates::Slopes> rates;
    for (std::size_t b = 0; b < batteries_; ++b)
        rates.push_back(state_.rate_slopes(b));
    for (std::size_t j = 0; j < count; ++j) {
        auto* const column = columns + j * all;
        std::fill_n(column, all, 0.0);
        bool const is_lag = j >= lags_;
        auto const of = is_lag ? j - lags_ : j;
        if (of >= batteries_) continue;
        here[j] = values[j] - reach;
        if (!state_.solve(here.data(), here.data() + lags_)) return false;
        here[j] = values[j];
        copy_slopes(column);
        for (std::size_t i = count; i < all; ++i)
            column[i] = (first[i] - column[i]) / reach;
        for (std::size_t b = 0; b < batteries_; ++b) {
            auto const amperes = column[count + b]; // the flows begin with them
            column[b] = rates[b].charge_by_amperes * amperes;
            column[lags_ + b] = rates[b].lag_by_amperes * amperes;
        }
        column[j] += is_lag ? -recovery_rate : rates[of].charge_by_charge;
    }
    return true;
}

BANKWRIGHT_INLINE void ChargeCourse::turn_stiff() {
    auto const slopes_at = [this](double const* values, double* slopes) {
        if (!state_.solve(values, values + lags_)) return false;
        copy_slopes(slopes);
        return true;
    };
    auto const derivative_at = [this](double const* values, double* columns) {
        return find_derivative(values, columns);
    };
    stiff_.emplace(charges_.count(), flows_.count(), slopes_at, derivative_at);
    stiff_started_ = false;
}

BANKWRIGHT_INLINE void ChargeCourse::stand_at_end(double h) {
    time_ = start_time_ + h;
    if (!stiff_) return go_to(h, numeric::dormand_prince::to_slope.back());
    std::copy_n(stiff_->end(), charges_.count(), charges_.now());
    for (std::size_t i = 0; i < flows_.count(); ++i)
        flows_.now()[i] = flows_.start(i) + stiff_->end()[charges_.count() + i];
}

BANKWRIGHT_INLINE double ChargeCourse::error(double h) const {
    if (stiff_) return stiff_->error();
    double largest = 0.0;
    for (std::size_t b = 0; b < charges_.count(); ++b) {
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
        auto const found = try_step(last ? left : step_, !last, apart, is_event);
        if (!found) continue;
        auto const taken = go_through(*found, apart, is_event, on_moment);
        if (last && !taken.stop) time_ = goal;
        on_moment();
        if (taken.stop) return *taken.stop;
        start_time_ = time_;
        if (stiff_) {
            charges_.start_here();
            flows_.start_here();
            stiff_started_ = false;
            continue;
        }
        charges_.start_next();
        flows_.start_next();
        constexpr std::size_t now_and_then = 16;
        if (++steps_ % now_and_then == 0 && !last && creeps(found->h)) turn_stiff();
    }
    return Stop::time;
}

// Nothing if a shorter step_ is to be tried. Leaves the end's moment solved.
BANKWRIGHT_INLINE std::optional<ChargeCourse::Step> ChargeCourse::try_step(double h, bool may_grow, double apart,
                                                                           std::function<bool()> const& is_event) {
    constexpr double trusted = 1.0; // [s] a step on whose way there is no answer must be this short to be believed
    if (!find_step(h)) {
        if (h <= trusted) return pin(h, is_event);
        step_ = 0.25 * h;
        return std::nullopt;
    }
    auto const missed = error(h);
    auto const growth = 0.9 * std::pow(tolerance_ / std::max(missed, 1e-300),
                                       1.0 / (stiff_ ? numeric::rodas::order : numeric::dormand_prince::order));
    if (missed > tolerance_) {
        step_ = h * std::max(growth, 0.1);
        return std::nullopt;
    }
    if (stiff_) { // what lies inside such a step is not told
        double moved = 0.0;
        for (std::size_t b = 0; b < charges_.count(); ++b)
            moved = std::max(moved, std::abs(stiff_->end()[b] - charges_.start(b)));
        if (moved > 1.5 * apart) {
            step_ = h * apart / moved;
            return std::nullopt;
        }
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
        (find_step(middle) && !is_event() ? before : after) = middle;
    }
    if (find_step(after)) return {after, Stop::event};
    find_step(before);
    return {before, Stop::no_operating_point};
}

BANKWRIGHT_INLINE bool ChargeCourse::stand_inside(double h, double part) {
    go_to(h, numeric::dormand_prince::inside(part));
    time_ = start_time_ + part * h;
    return state_.solve(charges_.now(), charges_.now() + lags_);
}

// From moment to moment to the step's end, or to an event that comes and goes before it. Leaves that moment solved.
BANKWRIGHT_INLINE ChargeCourse::Step ChargeCourse::go_through(Step step, double apart,
                                                              std::function<bool()> const& is_event,
                                                              std::function<void()> const& on_moment) {
    stand_at_end(step.h);
    if (stiff_) return step;
    double moved = 0.0; // [1]
    for (std::size_t b = 0; b < charges_.count(); ++b)
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
    stand_at_end(step.h);
    state_.solve(charges_.now(), charges_.now() + lags_);
    return step;
}

} // namespace bankwright
