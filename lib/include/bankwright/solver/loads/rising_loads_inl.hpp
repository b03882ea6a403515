// Bodies of rising_loads.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/load_laws.hpp"
#include "bankwright/solver/loads/rising_loads.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Dense>

namespace bankwright::solver {

namespace internal {

// The loads' equations at given currents of the others: `open` [V] is what the rising ports would see with all of them
// at rest, `ohms` what lies between them.
class RisingLoads {
public:
    RisingLoads(std::vector<Law> laws, Eigen::VectorXd open, Eigen::MatrixXd ohms)
        : laws_(std::move(laws)), open_(std::move(open)), ohms_(std::move(ohms)) {}

    // [A] that load k draws against all others as they are.
    double answer(Eigen::VectorXd const& amps, int k) const {
        double const ohm = ohms_(k, k), volts = open_[k] - ohms_.row(k).dot(amps) + ohm * amps[k];
        auto const& law = laws_[as_index(k)];
        if (auto const* square = std::get_if<SquareLaw>(&law)) return current_from(*square, volts, ohm);
        return current_from(std::get<LimitedSource>(law), volts, ohm);
    }

    // [V] the largest disagreement of a load with its port.
    double error(Eigen::VectorXd const& amps) const {
        double worst = 0.0;
        for (int k = 0; k < amps.size(); ++k) {
            double const off = ohms_(k, k) * std::abs(amps[k] - answer(amps, k));
            if (!(off <= worst)) worst = off; // not a number is an error too
        }
        return worst;
    }

    Limit limit(Eigen::VectorXd const& amps, int k) const {
        auto const* source = std::get_if<LimitedSource>(&laws_[as_index(k)]);
        if (!source) return Limit::between;
        double const next = answer(amps, k);
        return next >= 0.0 ? Limit::off : next <= -source->amperes ? Limit::full : Limit::between;
    }

    // [ohm] what a load that is not at a limit adds to its port: dV/dI along its own law.
    double own_ohms(Eigen::VectorXd const& amps, int k) const {
        auto const* square = std::get_if<SquareLaw>(&laws_[as_index(k)]);
        return square ? 1.0 / slope(*square, open_[k] - ohms_.row(k).dot(amps)) : 0.0;
    }

    // The loads that answer to a small change: not at a limit, and not a square-law load at rest.
    std::vector<int> answering(Eigen::VectorXd const& amps) const {
        std::vector<int> list;
        for (int k = 0; k < amps.size(); ++k)
            if (limit(amps, k) == Limit::between && std::isfinite(own_ohms(amps, k))) list.push_back(k);
        return list;
    }

    Eigen::VectorXd newton(Eigen::VectorXd amps) const {
        auto list = answering(amps);
        for (int k = 0; k < amps.size(); ++k)
            if (std::find(list.begin(), list.end(), k) == list.end()) amps[k] = answer(amps, k);
        // The others have moved: a square-law load may now be at rest.
        list.erase(std::remove_if(list.begin(), list.end(), [&](int k) { return !std::isfinite(own_ohms(amps, k)); }),
                   list.end());
        if (list.empty()) return amps;
        Eigen::VectorXd miss(list.size());
        for (std::size_t i = 0; i < list.size(); ++i) {
            int const k = list[i];
            double const volts = open_[k] - ohms_.row(k).dot(amps);
            if (auto const* square = std::get_if<SquareLaw>(&laws_[as_index(k)]))
                miss[static_cast<Eigen::Index>(i)] = (current(*square, volts) - amps[k]) / slope(*square, volts);
            else
                miss[static_cast<Eigen::Index>(i)] = volts - std::get<LimitedSource>(laws_[as_index(k)]).volts;
        }
        Eigen::VectorXd const step = solve_among(amps, list, miss);
        for (std::size_t i = 0; i < list.size(); ++i) {
            int const k = list[i];
            amps[k] += step[static_cast<Eigen::Index>(i)];
            if (auto const* source = std::get_if<LimitedSource>(&laws_[as_index(k)]))
                amps[k] = std::clamp(amps[k], -source->amperes, 0.0);
            else
                amps[k] = std::max(amps[k], 0.0);
        }
        return amps;
    }

    // [A] that make `volts` [V] at the listed ports, behind what the loads themselves add. Of several answers the
    // smallest: two equal sources on one pair of posts share evenly. Scaled to a unit diagonal, so that rank is judged
    // alike for loads of any size.
    Eigen::MatrixXd solve_among(Eigen::VectorXd const& amps, std::vector<int> const& list,
                                Eigen::MatrixXd const& volts) const {
        auto const size = static_cast<Eigen::Index>(list.size());
        Eigen::MatrixXd m(size, size);
        for (Eigen::Index i = 0; i < size; ++i) {
            for (Eigen::Index j = 0; j < size; ++j)
                m(i, j) = ohms_(list[static_cast<std::size_t>(i)], list[static_cast<std::size_t>(j)]);
            m(i, i) += own_ohms(amps, list[static_cast<std::size_t>(i)]);
        }
        Eigen::VectorXd const scale = m.diagonal().cwiseSqrt().cwiseInverse();
        Eigen::MatrixXd const scaled = scale.asDiagonal() * m * scale.asDiagonal();
        return scale.asDiagonal() * scaled.completeOrthogonalDecomposition().solve(scale.asDiagonal() * volts);
    }

private:
    std::vector<Law> laws_;
    Eigen::VectorXd open_;
    Eigen::MatrixXd ohms_;
};

} // namespace internal

BANKWRIGHT_INLINE Settled settle(Ports const& ports, std::vector<std::size_t> const& rising,
                                 std::vector<std::size_t> const& driven, std::vector<double> const& driven_amps,
                                 std::vector<double> start) {
    auto const count = static_cast<Eigen::Index>(rising.size()), others = static_cast<Eigen::Index>(driven.size());
    auto const ohms = [&](std::vector<std::size_t> const& rows, std::vector<std::size_t> const& columns) {
        Eigen::MatrixXd m(rows.size(), columns.size());
        for (std::size_t i = 0; i < rows.size(); ++i)
            for (std::size_t j = 0; j < columns.size(); ++j)
                m(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) = ports.ohm(rows[i], columns[j]);
        return m;
    };
    auto const open = [&](std::vector<std::size_t> const& list) {
        Eigen::VectorXd v(list.size());
        for (std::size_t i = 0; i < list.size(); ++i)
            v[static_cast<Eigen::Index>(i)] = ports.open_volts[list[i]];
        return v;
    };
    Eigen::VectorXd const given = Eigen::Map<Eigen::VectorXd const>(driven_amps.data(), others);
    Eigen::MatrixXd const own = ohms(rising, rising), across = ohms(rising, driven);
    Eigen::VectorXd const seen = open(rising) - across * given;
    std::vector<Law> laws;
    for (std::size_t port : rising)
        laws.push_back(ports.laws[port]);
    internal::RisingLoads const loads(std::move(laws), seen, own);

    Settled settled;
    start.resize(rising.size(), 0.0);
    Eigen::VectorXd amps = Eigen::Map<Eigen::VectorXd const>(start.data(), count);
    double scale = count > 0 ? seen.cwiseAbs().maxCoeff() : 0.0; // [V] what rounding is measured against
    for (std::size_t port : rising)
        if (auto const* source = std::get_if<LimitedSource>(&ports.laws[port]))
            scale = std::max(scale, std::abs(source->volts));
    double error = loads.error(amps);
    // Newton's method where it halves the least error seen; else sweeps from load to load, which always come closer,
    // but may take thousands. The longer they are needed, the more of them before Newton's method is tried again.
    double least = error;
    int between = 1, left = 0; // sweeps
    for (constexpr int most_sweeps = 20000; error > 0.0 && settled.iterations < most_sweeps; ++settled.iterations) {
        if (left-- == 0) {
            Eigen::VectorXd const tried = loads.newton(amps);
            double const tried_error = loads.error(tried);
            if (tried_error <= 0.5 * least) {
                amps = tried;
                error = least = tried_error;
                between = 1;
                left = 0;
                continue;
            }
            between = std::min(2 * between, 64);
            left = between - 1;
        }
        if (error <= 1e-14 * scale) break; // rounding
        for (int k = 0; k < count; ++k)
            amps[k] = loads.answer(amps, k);
        error = loads.error(amps);
        least = std::min(least, error);
    }
    settled.converged = error <= 1e-12 * scale;

    settled.rising_amps.assign(amps.data(), amps.data() + count);
    for (int k = 0; k < count; ++k)
        settled.limits.push_back(loads.limit(amps, k));
    Eigen::VectorXd const volts = open(driven) - ohms(driven, driven) * given - across.transpose() * amps;
    Eigen::MatrixXd fall = ohms(driven, driven);
    auto const list = loads.answering(amps);
    if (!list.empty() && others > 0) {
        Eigen::MatrixXd part(list.size(), others);
        for (std::size_t i = 0; i < list.size(); ++i)
            part.row(static_cast<Eigen::Index>(i)) = across.row(list[i]);
        fall -= part.transpose() * loads.solve_among(amps, list, part);
    }
    settled.driven_volts.assign(volts.data(), volts.data() + others);
    settled.driven_ohms.assign(fall.data(), fall.data() + fall.size()); // symmetric, so by column is by row
    return settled;
}

} // namespace bankwright::solver
