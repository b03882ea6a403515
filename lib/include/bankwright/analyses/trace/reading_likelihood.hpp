// How likely does one wiring make a set of readings, and what does it then expect of one more? Readings that share
// their sources of spread: y = mean + S z + e, with z standard normal and e each reading's own error.
#pragma once

#include "bankwright/analyses/trace/expected_readings.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <utility>
#include <vector>

namespace bankwright {

// Readings are expected to some 1e-10 V, and of what lies far off a likelihood tells a thousand times less: what
// differs by less is one and the same, so that rounding decides no order.
inline double but_for_rounding(double value) { return std::round(1e6 * value); }

class ReadingLikelihood {
public:
    // `values` and `errors` (one standard deviation of the meter) by reading.
    ReadingLikelihood(std::vector<ExpectedReading> expected, std::vector<double> const& values,
                      std::vector<double> const& errors)
        : owned_(std::move(expected)) {
        for (auto const& one : owned_)
            expected_.push_back(&one);
        weigh(values, errors);
    }
    // What is expected is looked at as long as this lives.
    ReadingLikelihood(std::vector<ExpectedReading const*> expected, std::vector<double> const& values,
                      std::vector<double> const& errors)
        : expected_(std::move(expected)) {
        weigh(values, errors);
    }
    ReadingLikelihood(ReadingLikelihood const&) = delete;
    ReadingLikelihood& operator=(ReadingLikelihood const&) = delete;
    ReadingLikelihood(ReadingLikelihood&&) = default;
    ReadingLikelihood& operator=(ReadingLikelihood&&) = default;

    double logarithm() const { return logarithm_; } // of the density, less a constant that all wirings share
    double robust() const { return robust_; }       // the same, forgiving of single readings that do not fit at all
    double misfit() const { return misfit_; }       // root mean square [standard deviations]

    // What the readings at hand say of a quantity with these sensitivities: its projection on them, decorrelated. Given
    // the readings, its mean moves by projection . weights() and its variance falls by |projection|^2.
    std::vector<double> project(std::vector<double> const& sensitivities) const {
        auto const n = weights_.size();
        std::vector<double> projection(n);
        for (std::size_t i = 0; i < n; ++i) {
            double value = dot(sensitivities, expected_[i]->sensitivities);
            for (std::size_t j = 0; j < i; ++j)
                value -= factor_[i * n + j] * projection[j];
            projection[i] = value / factor_[i * n + i];
        }
        return projection;
    }
    std::vector<double> const& weights() const { return weights_; }

    // The same of many quantities, each a row of sensitivities to these elements and to no other: rows of projections.
    std::vector<double> project(std::vector<double> const& rows, std::vector<std::size_t> const& elements) const {
        auto const n = weights_.size(), many = elements.size(), count = many == 0 ? 0 : rows.size() / many;
        std::vector<double> known(n * many), projections(n * count);
        for (std::size_t i = 0; i < n; ++i)
            for (std::size_t u = 0; u < many; ++u)
                known[i * many + u] = expected_[i]->sensitivities[elements[u]];
        for (std::size_t row = 0; row < count; ++row) {
            double* const projection = projections.data() + row * n; // of no readings: none
            for (std::size_t i = 0; i < n; ++i) {
                double const *const a = rows.data() + row * many, *const b = known.data() + i * many;
                double value = std::inner_product(a, a + many, b, 0.0);
                for (std::size_t j = 0; j < i; ++j)
                    value -= factor_[i * n + j] * projection[j];
                projection[i] = value / factor_[i * n + i];
            }
        }
        return projections;
    }

private:
    void weigh(std::vector<double> const& values, std::vector<double> const& errors) {
        factor_.assign(values.size() * values.size(), 0.0);
        weights_.assign(values.size(), 0.0);
        auto const n = values.size();
        std::vector<double> residual(n);
        for (std::size_t i = 0; i < n; ++i) {
            residual[i] = values[i] - expected_[i]->mean;
            for (std::size_t j = 0; j <= i; ++j)
                factor_[i * n + j] = dot(expected_[i]->sensitivities, expected_[j]->sensitivities);
            factor_[i * n + i] += errors[i] * errors[i] + expected_[i]->own_spread * expected_[i]->own_spread;
            robust_ -= std::log1p(residual[i] * residual[i] / factor_[i * n + i]);
        }
        factorize(n);
        // Residuals in the order of the factor: their squares sum to chi squared.
        double squares = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            double value = residual[i];
            for (std::size_t j = 0; j < i; ++j)
                value -= factor_[i * n + j] * weights_[j];
            weights_[i] = value / factor_[i * n + i];
            squares += weights_[i] * weights_[i];
            logarithm_ -= std::log(factor_[i * n + i]);
        }
        logarithm_ -= 0.5 * squares;
        misfit_ = n == 0 ? 0.0 : std::sqrt(squares / static_cast<double>(n));
    }

    static double dot(std::vector<double> const& a, std::vector<double> const& b) {
        return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
    }

    // Cholesky, in place. Every diagonal entry holds a meter's error, so it is positive definite.
    void factorize(std::size_t n) {
        for (std::size_t i = 0; i < n; ++i)
            for (std::size_t j = 0; j <= i; ++j) {
                double sum = factor_[i * n + j];
                for (std::size_t k = 0; k < j; ++k)
                    sum -= factor_[i * n + k] * factor_[j * n + k];
                factor_[i * n + j] = i == j ? std::sqrt(sum) : sum / factor_[j * n + j];
            }
    }

    std::vector<ExpectedReading> owned_;
    std::vector<ExpectedReading const*> expected_; // by reading
    std::vector<double> factor_;                   // lower triangle, row by row
    std::vector<double> weights_;                  // the residuals, decorrelated
    double logarithm_ = 0.0, robust_ = 0.0, misfit_ = 0.0;
};

} // namespace bankwright
