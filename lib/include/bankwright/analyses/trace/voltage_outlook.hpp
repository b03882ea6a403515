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
    VoltageOutlooks(ExpectedReadings& expected, ReadingLikelihood const& known, std::size_t terminals)
        : expected_(&expected), many_(expected.unsure_elements().size()), readings_(known.weights().size()),
          known_(known.project(expected.node_sensitivities(), expected.unsure_elements())) {
        for (std::size_t t = 0; t < terminals; ++t) {
            auto const node = static_cast<int>(t);
            island_.push_back(expected.island(node));
            double volts = expected.solved() ? expected.volts_at(node) : 0.0;
            if (many_ > 0 && expected.solved())
                for (std::size_t i = 0; i < readings_; ++i)
                    volts += known_[expected.merged(node) * readings_ + i] * known.weights()[i];
            volts_.push_back(volts);
        }
    }

    int terminals() const { return static_cast<int>(volts_.size()); }
    bool solved() const { return expected_->solved(); }
    std::vector<int> const& islands() const { return island_; }        // by terminal
    std::vector<double> const& island_volts() const { return volts_; } // [V] against its island's own zero

    VoltageOutlook of(int red, int black) const {
        if (!is_known(red, black)) return {0.0, expected_->volts_reading(red, black).own_spread};
        if (many_ == 0) return {volts(red, black), 0.0};
        auto const a = expected_->merged(red), b = expected_->merged(black);
        double const variance =
            distance(expected_->node_sensitivities(), a, b, many_) - distance(known_, a, b, readings_);
        return {volts(red, black), std::sqrt(std::max(variance, 0.0))};
    }
    double volts(int red, int black) const { // of() without its spread, which is most of the work
        if (!is_known(red, black)) return 0.0;
        return volts_[static_cast<std::size_t>(red)] - volts_[static_cast<std::size_t>(black)];
    }

private:
    bool is_known(int red, int black) const {
        return expected_->solved() &&
               island_[static_cast<std::size_t>(red)] == island_[static_cast<std::size_t>(black)];
    }
    static double distance(std::vector<double> const& rows, std::size_t a, std::size_t b, std::size_t width) {
        double sum = 0.0;
        for (std::size_t i = 0; i < width; ++i) {
            double const apart = rows[a * width + i] - rows[b * width + i];
            sum += apart * apart;
        }
        return sum;
    }

    ExpectedReadings* expected_;
    std::size_t many_ = 0, readings_ = 0;
    std::vector<double> known_; // projections, by merged node
    std::vector<int> island_;   // by terminal
    std::vector<double> volts_; // [V] by terminal
};

} // namespace bankwright
