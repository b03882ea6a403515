#pragma once

#include "bankwright/numeric/rodas.hpp"
#include "bankwright/solver/stiff_step.hpp"

#include <array>
#include <utility>

#include <Eigen/LU>

namespace bankwright::solver {

struct StiffStep::Parts {
    Eigen::Index values, flows;
    SlopesAt slopes_at;
    DerivativeAt derivative_at;
    Eigen::MatrixXd derivative; // of all slopes by the values
    Eigen::VectorXd begin, first, slopes, here, end;
    std::array<Eigen::VectorXd, numeric::rodas::stages> stages;
};

BANKWRIGHT_INLINE StiffStep::StiffStep(std::size_t values, std::size_t flows, SlopesAt slopes_at,
                                       DerivativeAt derivative_at)
    : parts_(std::make_unique<Parts>()) {
    auto& p = *parts_;
    p.values = static_cast<Eigen::Index>(values);
    p.flows = static_cast<Eigen::Index>(flows);
    p.slopes_at = std::move(slopes_at);
    p.derivative_at = std::move(derivative_at);
    auto const all = p.values + p.flows;
    p.derivative.resize(all, p.values);
    p.first.resize(all);
    p.slopes.resize(all);
    p.end.resize(all);
    for (auto& stage : p.stages)
        stage.resize(all);
}

BANKWRIGHT_INLINE StiffStep::~StiffStep() = default;
BANKWRIGHT_INLINE StiffStep::StiffStep(StiffStep&&) noexcept = default;

BANKWRIGHT_INLINE bool StiffStep::start(double const* values) {
    auto& p = *parts_;
    p.begin = Eigen::Map<Eigen::VectorXd const>(values, p.values);
    return p.derivative_at(p.begin.data(), p.derivative.data()) && p.slopes_at(p.begin.data(), p.first.data());
}

BANKWRIGHT_INLINE bool StiffStep::go(double h) {
    namespace rule = numeric::rodas;
    auto& p = *parts_;
    auto const each = 1.0 / (rule::gamma * h);
    Eigen::MatrixXd matrix = -p.derivative.topRows(p.values);
    matrix.diagonal().array() += each;
    Eigen::PartialPivLU<Eigen::MatrixXd> const factors(matrix);
    for (std::size_t i = 0; i < rule::stages; ++i) {
        p.here = p.begin;
        for (std::size_t j = 0; j < i; ++j)
            p.here += rule::at[i][j] * p.stages[j].head(p.values);
        if (i == 0)
            p.slopes = p.first;
        else if (!p.here.allFinite() || !p.slopes_at(p.here.data(), p.slopes.data()))
            return false;
        for (std::size_t j = 0; j < i; ++j)
            p.slopes += rule::back[i][j] / h * p.stages[j];
        p.stages[i].head(p.values) = factors.solve(p.slopes.head(p.values));
        p.stages[i].tail(p.flows) =
            (p.slopes.tail(p.flows) + p.derivative.bottomRows(p.flows) * p.stages[i].head(p.values)) / each;
    }
    p.end.head(p.values) = p.here + p.stages[rule::stages - 1].head(p.values);
    p.end.tail(p.flows) = p.stages[rule::stages - 1].tail(p.flows);
    for (std::size_t j = 0; j + 1 < rule::stages; ++j)
        p.end.tail(p.flows) += rule::at[rule::stages - 1][j] * p.stages[j].tail(p.flows);
    return p.end.allFinite();
}

BANKWRIGHT_INLINE double const* StiffStep::end() const { return parts_->end.data(); }

BANKWRIGHT_INLINE double StiffStep::error() const {
    return parts_->stages[numeric::rodas::stages - 1].head(parts_->values).cwiseAbs().maxCoeff();
}

} // namespace bankwright::solver
