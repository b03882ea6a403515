// Bodies of constant_power.hpp.
#pragma once

#include "bankwright/solver/loads/constant_power.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Dense>

namespace bankwright::solver {

BANKWRIGHT_INLINE ConstantPowerLoads::ConstantPowerLoads(Ports const& ports, std::vector<std::size_t> rising,
                                                         std::vector<std::size_t> powered, int max_iterations)
    : ports_(ports), rising_(std::move(rising)), powered_(std::move(powered)), max_iterations_(max_iterations) {
    for (std::size_t port : powered_)
        watts_.push_back(std::get<ConstantPower>(ports_.laws[port]).watts);
    settle_at(std::vector<double>(powered_.size(), 0.0));
}

BANKWRIGHT_INLINE void ConstantPowerLoads::settle_at(std::vector<double> const& amps) {
    amps_ = amps;
    around_ = settle(ports_, rising_, powered_, amps_, std::move(around_.rising_amps));
    ++iterations_;
}

BANKWRIGHT_INLINE bool ConstantPowerLoads::pull_down() const {
    double const most = *std::max_element(around_.driven_ohms.begin(), around_.driven_ohms.end());
    return std::all_of(around_.driven_ohms.begin(), around_.driven_ohms.end(),
                       [&](double ohms) { return ohms >= -1e-12 * most; });
}

BANKWRIGHT_INLINE bool ConstantPowerLoads::alive() const {
    return std::all_of(around_.driven_volts.begin(), around_.driven_volts.end(), [](double v) { return v > 0.0; });
}

BANKWRIGHT_INLINE double ConstantPowerLoads::missing(std::size_t load, double share) const {
    return share * watts_[load] - around_.driven_volts[load] * amps_[load];
}

BANKWRIGHT_INLINE double ConstantPowerLoads::worst_missing(double share) const {
    double worst = 0.0;
    for (std::size_t k = 0; k < watts_.size(); ++k)
        worst = std::max(worst, std::abs(missing(k, share)) / (share * watts_[k]));
    return worst;
}

namespace internal {

// d(V I) = V dI - I Z dI, row by row divided by V.
inline Eigen::MatrixXd power_by_current(Settled const& around, std::vector<double> const& drawn) {
    auto const count = static_cast<Eigen::Index>(drawn.size());
    using Rows = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
    Eigen::Map<Rows const> const ohms(around.driven_ohms.data(), count, count);
    Eigen::Map<Eigen::VectorXd const> const volts(around.driven_volts.data(), count), amps(drawn.data(), count);
    return Eigen::MatrixXd::Identity(count, count) - Eigen::MatrixXd(amps.cwiseQuotient(volts).asDiagonal() * ohms);
}

} // namespace internal

BANKWRIGHT_INLINE double ConstantPowerLoads::slack() const {
    return internal::power_by_current(around_, amps_).determinant();
}

BANKWRIGHT_INLINE bool ConstantPowerLoads::step_for(std::vector<double> const& watts, std::vector<double> const& drawn,
                                                    std::vector<double>& step) const {
    auto const count = static_cast<Eigen::Index>(powered_.size());
    Eigen::PartialPivLU<Eigen::MatrixXd> const lu(internal::power_by_current(around_, drawn));
    Eigen::Map<Eigen::VectorXd const> const more(watts.data(), count), volts(around_.driven_volts.data(), count);
    Eigen::VectorXd const change = lu.solve(more.cwiseQuotient(volts));
    step.assign(change.data(), change.data() + count);
    return lu.determinant() > 0.0 && change.allFinite();
}

// Without its sources changing state, a point from which no step leads up has nothing above it. Sources go from off to
// full as the loads draw more, so with all of them full there is no other state to come.
BANKWRIGHT_INLINE bool ConstantPowerLoads::kinks_ahead() const {
    for (std::size_t r = 0; r < rising_.size(); ++r)
        if (std::holds_alternative<LimitedSource>(ports_.laws[rising_[r]]) && around_.limits[r] != Limit::full)
            return true;
    return false;
}

// To the currents `tried`, if that is below the answer for sure: in the same state and with power still missing.
BANKWRIGHT_INLINE bool ConstantPowerLoads::advance(double share, std::vector<double> const& tried) {
    std::vector<double> const from = amps_;
    Settled const from_around = around_;
    settle_at(tried);
    bool ok = around_.limits == from_around.limits && alive();
    for (std::size_t k = 0; k < powered_.size(); ++k)
        ok = ok && missing(k, share) >= -1e-10 * share * watts_[k];
    if (ok) return true;
    amps_ = from;
    around_ = from_around;
    return false;
}

// From the open circuit up. While the limited sources keep their states, P / V is convex in the currents: a Newton step
// from below stays below, and one that is not upward proves that this state holds no answer.
BANKWRIGHT_INLINE Status ConstantPowerLoads::climb(double share) {
    std::size_t const count = powered_.size();
    std::vector<double> watts(count), drawn(count), step;
    double stride = 1.0; // through a state without an answer
    for (int i = 0; i < max_iterations_; ++i) {
        if (!alive()) return Status::no_operating_point;
        double const before = worst_missing(share);
        if (before <= 1e-14) return Status::solved;
        std::vector<double> const from = amps_;
        for (std::size_t k = 0; k < count; ++k) {
            watts[k] = missing(k, share);
            drawn[k] = share * watts_[k] / around_.driven_volts[k];
        }
        double const most = *std::max_element(drawn.begin(), drawn.end());
        bool const upward = step_for(watts, drawn, step) &&
                            std::all_of(step.begin(), step.end(), [&](double s) { return s >= -1e-9 * most; });
        bool moved = false;
        if (upward) {
            stride = 1.0;
            for (double part = 1.0; !moved && part > 0.05; part *= 0.5) {
                std::vector<double> tried = from;
                for (std::size_t k = 0; k < count; ++k)
                    tried[k] = std::max(0.0, tried[k] + part * step[k]);
                moved = advance(share, tried);
            }
            if (moved && before < 1e-10 && worst_missing(share) >= 0.5 * before) return Status::solved; // rounding
        } else {
            if (before <= 1e-12) return Status::solved; // the fold itself, as near as doubles tell
            if (!kinks_ahead()) return Status::no_operating_point;
            if (count == 1) { // with one load there is nothing to miss on the way to the end of this state
                moved = advance(share, {from[0] + stride * (drawn[0] - from[0])});
                stride = moved ? 4.0 * stride : std::max(1.0, 0.25 * stride);
                if (!moved && stride > 1.0) continue;
            }
        }
        if (!moved) settle_at(drawn);
    }
    return worst_missing(share) <= 1e-11 ? Status::solved : Status::not_converged;
}

BANKWRIGHT_INLINE bool ConstantPowerLoads::correct(double share) {
    std::size_t const count = powered_.size();
    std::vector<double> watts(count), step;
    double before = worst_missing(share);
    for (int i = 0; i < max_iterations_; ++i) {
        if (!alive()) return false;
        for (std::size_t k = 0; k < count; ++k)
            watts[k] = missing(k, share);
        bool const before_fold = step_for(watts, amps_, step);
        if (before <= 1e-14) return before_fold;
        std::vector<double> next = amps_;
        for (std::size_t k = 0; k < count; ++k)
            next[k] += step[k];
        settle_at(next);
        double const now = worst_missing(share);
        if (now >= 0.5 * before && now <= 1e-11) return before_fold && alive();
        if (!(now < 0.9 * before)) return false;
        before = now;
    }
    return false;
}

BANKWRIGHT_INLINE Status ConstantPowerLoads::follow(double share) {
    settle_at(std::vector<double>(powered_.size(), 0.0));
    double reached = 0.0;
    for (double ahead = share; reached < share;) {
        double const target = std::min(share, reached + ahead);
        std::vector<double> const from = amps_;
        Settled const from_around = around_;
        std::vector<double> watts = watts_, step;
        for (double& w : watts)
            w *= target - reached;
        bool ok = step_for(watts, amps_, step);
        if (ok) {
            std::vector<double> guess = from;
            for (std::size_t k = 0; k < guess.size(); ++k)
                guess[k] += step[k];
            settle_at(guess);
            ok = correct(target);
            if (ok && ahead > 1e-6 * share) { // small steps may bend at a kink, large ones must not leave the curve
                double off = 0.0, moved = 0.0;
                for (std::size_t k = 0; k < guess.size(); ++k) {
                    off = std::max(off, std::abs(amps_[k] - guess[k]));
                    moved = std::max(moved, std::abs(amps_[k] - from[k]));
                }
                ok = off <= 0.3 * moved;
            }
        }
        if (ok) {
            reached = target;
            ahead *= 2.0;
        } else {
            amps_ = from;
            around_ = from_around;
            ahead *= 0.5;
            if (ahead < 1e-10 * share) return Status::no_operating_point;
        }
    }
    return Status::solved;
}

BANKWRIGHT_INLINE Status ConstantPowerLoads::find(double share, std::vector<double> const& start) {
    settle_at(start);
    if (powered_.empty() || share == 0.0) return around_.converged ? Status::solved : Status::not_converged;
    if (!pull_down()) return follow(share);
    Status const status = climb(share);
    return pull_down() && status != Status::not_converged ? status : follow(share);
}

} // namespace bankwright::solver
