// Numbers that a step through time carries along: where they stand, where the step began, and the slopes found on the
// way.
#pragma once

#include "bankwright/numeric/dormand_prince.hpp"
#include "bankwright/solver/column_sums.hpp"
#include "bankwright/solver/lanes.hpp"

#include <algorithm>
#include <cstddef>

namespace bankwright {

class CarriedValues {
public:
    using Shares = numeric::dormand_prince::Shares;

    explicit CarriedValues(std::size_t count)
        : count_(count), stride_(solver::padded(count)), now_(stride_ / solver::lanes),
          columns_((1 + numeric::dormand_prince::slopes) * stride_ / solver::lanes) {}

    std::size_t count() const { return count_; }
    double* now() { return now_.data(); }
    double const* now() const { return now_.data(); }
    double const* start() const { return columns_.data(); }
    double start(std::size_t i) const { return columns_.data()[i]; }
    double* slope(std::size_t k) { return columns_.data() + (1 + k) * stride_; }
    double const* slope(std::size_t k) const { return columns_.data() + (1 + k) * stride_; }

    void start_here() { std::copy_n(now(), count_, columns_.data()); }
    // The end of one step is the start of the next.
    void start_next() {
        start_here();
        std::swap_ranges(slope(0), slope(0) + count_, slope(numeric::dormand_prince::slopes - 1));
    }

    // To where a step of h seconds comes by these shares of its first `slopes` slopes. `to` holds as many rows as
    // now().
    void go(double h, Shares shares, std::size_t slopes, double* to) const {
        for (double& share : shares)
            share *= h;
        solver::sum_columns(columns_.data(), stride_, shares.data(), slopes, to, set_);
    }

private:
    std::size_t count_, stride_;
    solver::LaneRows now_;
    solver::LaneRows columns_; // the start, then the slopes
    solver::InstructionSet set_ = solver::widest_here();
};

} // namespace bankwright
