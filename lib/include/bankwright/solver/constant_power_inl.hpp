// Bodies of constant_power.hpp.
#pragma once

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Dense>

#include "bankwright/solver/constant_power.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE ConstantPowerLoads::ConstantPowerLoads(Ports const &ports, std::vector<std::size_t> rising,
                                                         std::vector<std::size_t> powered, int max_iterations)
    : ports_(ports), rising_(std::move(rising)), powered_(std::move(powered)), max_iterations_(max_iterations) {
    for (std::size_t port : powered_)
        watts_.push_back(std::get<ConstantPower>(ports_.laws[port]).watts);
    settle_at(std::vector<double>(powered_.size(), 0.0));
}

BANKWRIGHT_INLINE void ConstantPowerLoads::settle_at(std::vector<double> const &amps) {
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

BANKWRIGHT_INLINE bool ConstantPowerLoads::step_for(std::vector<double> const &watts, std::vector<double> const &drawn,
                                                    std::vector<double> &step) const {
    auto const count = static_cast<Eigen::Index>(powered_.size());
    using Rows = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
    Eigen::Map<Rows const> const ohms(around_.driven_ohms.data(), count, count);
    auto const vector = [&](std::vector<double> const &v) {
        return Eigen::Map<Eigen::VectorXd const>(v.data(), count);
    };
    // d(V I) = V dI - I Z dI, row by row divided by V
    Eigen::VectorXd const volts = vector(around_.driven_volts);
    Eigen::MatrixXd const matrix = Eigen::MatrixXd::Identity(count, count) -
                                   Eigen::MatrixXd(vector(drawn).cwiseQuotient(volts).asDiagonal() * ohms);
    Eigen::PartialPivLU<Eigen::MatrixXd> const lu(matrix);
    Eigen::VectorXd const change = lu.solve(vector(watts).cwiseQuotient(volts));
    step.assign(change.data(), change.data() + count);
    return lu.determinant() > 0.0 && change.allFinite();
}

// From the open circuit up. While the limited sources keep their states, P / V is convex in the currents: a Newton step
// from below stays below, and one that is not upward proves that there is nothing to reach.
BANKWRIGHT_INLINE Status ConstantPowerLoads::climb(double share) {
    bool const kinks = std::any_of(rising_.begin(), rising_.end(), [&](std::size_t port) {
        return std::holds_alternative<LimitedSource>(ports_.laws[port]);
    });
    std::size_t const count = powered_.size();
    std::vector<double> watts(count), drawn(count), step;
    int const most = kinks ? 50 * max_iterations_ : max_iterations_;
    for (int i = 0; i < most; ++i) {
        if (!alive()) return Status::no_operating_point;
        if (worst_missing(share) <= 1e-14) return Status::solved;
        std::vector<double> const from = amps_;
        for (std::size_t k = 0; k < count; ++k) {
            watts[k] = missing(k, share);
            drawn[k] = share * watts_[k] / around_.driven_volts[k];
        }
        bool const before_fold = step_for(watts, drawn, step);
        double const done = worst_missing(share);
        bool const upward = before_fold && std::all_of(step.begin(), step.end(), [&](double s) {
                                return s >= -1e-9 * *std::max_element(drawn.begin(), drawn.end());
                            });
        if (!upward && done <= 1e-12) return Status::solved; // at the fold itself, as near as doubles tell
        if (!upward && !kinks) return Status::no_operating_point;

        bool stepped = false;
        std::vector<Limit> const limits = around_.limits;
        for (double part = 1.0; upward && !stepped && part > 0.05; part *= 0.5) {
            std::vector<double> tried = from;
            for (std::size_t k = 0; k < count; ++k)
                tried[k] = std::max(0.0, tried[k] + part * step[k]);
            settle_at(tried);
            stepped = around_.limits == limits && alive();
            for (std::size_t k = 0; k < count; ++k)
                stepped = stepped && missing(k, share) >= -1e-10 * share * watts_[k];
        }
        if (stepped && done < 1e-10 && worst_missing(share) >= 0.5 * done) return Status::solved; // rounding
        if (!stepped) settle_at(drawn);
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
        for (double &w : watts)
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

BANKWRIGHT_INLINE Status ConstantPowerLoads::find(double share) {
    settle_at(std::vector<double>(powered_.size(), 0.0));
    if (powered_.empty() || share == 0.0) return around_.converged ? Status::solved : Status::not_converged;
    if (!pull_down()) return follow(share);
    Status const status = climb(share);
    return pull_down() ? status : follow(share);
}

} // namespace bankwright::solver
