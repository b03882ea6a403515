// What will a voltmeter show next, anywhere on a wiring, and a clamp, once some readings are known?
#pragma once

#include "bankwright/analyses/trace/expected_readings.hpp"
#include "bankwright/analyses/trace/reading_likelihood.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace bankwright {

struct VoltageOutlook {
    double volts = 0.0;  // [V]
    double spread = 0.0; // [V] one standard deviation, without the meter's error
};

struct CurrentOutlook {
    double amperes = 0.0; // [A]
    double spread = 0.0;  // [A] one standard deviation, without the clamp's error
};

inline CurrentOutlook current_outlook(ExpectedReadings const& expected, ReadingLikelihood const& known,
                                      std::size_t element) {
    auto const reading = expected.amps_reading(element);
    auto const projection = known.project(reading.sensitivities);
    CurrentOutlook outlook{reading.mean, 0.0};
    double variance = reading.own_spread * reading.own_spread;
    for (double one : reading.sensitivities)
        variance += one * one;
    for (std::size_t i = 0; i < projection.size(); ++i) {
        outlook.amperes += projection[i] * known.weights()[i];
        variance -= projection[i] * projection[i];
    }
    outlook.spread = std::sqrt(std::max(variance, 0.0));
    return outlook;
}

// Prepared node by node, so that every pair of terminals is cheap.
class VoltageOutlooks {
public:
    VoltageOutlooks(ExpectedReadings const& expected, ReadingLikelihood const& known, std::size_t nodes)
        : expected_(&expected) {
        for (std::size_t n = 0; n < nodes; ++n) {
            auto const sensitivities = expected.node_sensitivities(static_cast<int>(n));
            auto const projection = known.project(sensitivities);
            double shift = 0.0;
            for (std::size_t i = 0; i < projection.size(); ++i)
                shift += projection[i] * known.weights()[i];
            free_.push_back(nonzero(sensitivities));
            known_.push_back(projection);
            shift_.push_back(shift);
        }
    }

    int terminals() const { return static_cast<int>(shift_.size()); }
    VoltageOutlook of(int red, int black) const {
        if (!is_known(red, black)) return {0.0, expected_->volts_reading(red, black).own_spread};
        auto const a = static_cast<std::size_t>(red), b = static_cast<std::size_t>(black);
        double variance = distance(free_[a], free_[b]) - distance(known_[a], known_[b]);
        return {volts(red, black), std::sqrt(std::max(variance, 0.0))};
    }
    double volts(int red, int black) const { // of() without its spread, which is most of the work
        if (!is_known(red, black)) return 0.0;
        return expected_->volts(red, black) + shift_[static_cast<std::size_t>(red)] -
               shift_[static_cast<std::size_t>(black)];
    }

private:
    bool is_known(int red, int black) const { return expected_->solved() && expected_->together(red, black); }
    static double distance(std::vector<double> const& a, std::vector<double> const& b) {
        double sum = 0.0;
        for (std::size_t i = 0; i < a.size(); ++i)
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        return sum;
    }

    // Most parts move nothing at rest: the same ones at every node, so they can be left out.
    std::vector<double> nonzero(std::vector<double> const& all) {
        if (kept_.empty())
            for (std::size_t i = 0; i < all.size(); ++i)
                if (expected_->moves(i)) kept_.push_back(i);
        std::vector<double> left;
        for (auto i : kept_)
            left.push_back(all[i]);
        return left;
    }

    ExpectedReadings const* expected_;
    std::vector<std::size_t> kept_;
    std::vector<std::vector<double>> free_, known_;
    std::vector<double> shift_;
};

} // namespace bankwright
