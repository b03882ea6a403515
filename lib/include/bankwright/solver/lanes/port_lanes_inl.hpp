// Bodies of port_lanes.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/lanes/port_lanes.hpp"
#include "bankwright/solver/load_laws.hpp"
#include "bankwright/solver/loads/port_loads.hpp"
#include "bankwright/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bankwright::solver {

BANKWRIGHT_INLINE PortLanes::PortLanes(std::size_t ports)
    : ports_(ports), laws_(ports), rows_(ports * (2 + ports)), matrix_(ports * (ports + 1)), lost_(lanes, 0) {}

template <class Kind>
bool PortLanes::all_are() const {
    return std::all_of(laws_.begin(), laws_.end(),
                       [](LaneLaw const& law) { return std::holds_alternative<Kind>(law.kind); });
}

BANKWRIGHT_INLINE int PortLanes::find_currents(int used) {
    std::vector<char> settled(lanes, 0);
    if (all_are<ConstantPower>() || all_are<SquareLaw>()) together(used, settled);
    for (int lane = 0; lane < used; ++lane) {
        lost_[as_index(lane)] = 0;
        if (!settled[as_index(lane)]) alone(lane);
    }
    return static_cast<int>(std::count(settled.begin(), settled.begin() + used, 1));
}

// F(I) = I - law(V0 - Z I) = 0. Elimination without exchange: before the fold the matrix I + slope Z of powers has
// positive pivots, and a lane that meets another kind is left to alone().
BANKWRIGHT_INLINE void PortLanes::together(int used, std::vector<char>& settled) {
    constexpr int most =
        12; // steps; half a dozen are usual, and beyond this a lane is so near its fold that alone() does better
    constexpr double still = 4e-16; // of the largest current
    std::size_t const n = ports_;
    auto const entry = [&](std::size_t row, std::size_t column) {
        return matrix_.row(static_cast<int>(row * (n + 1) + column));
    };
    bool const powers = all_are<ConstantPower>();
    std::vector<char> fits(lanes, 1);
    for (std::size_t p = 0; powers && p < n; ++p) // powers that lift each other may have their fold elsewhere
        for (std::size_t q = 0; q < n; ++q)
            for (int lane = 0; lane < used; ++lane)
                fits[as_index(lane)] &= ohms(p, q)[lane] >= 0.0;
    for (std::size_t p = 0; p < n; ++p)
        std::fill_n(amps_of(p), lanes, 0.0);

    for (int step = 0; step < most; ++step) {
        for (std::size_t p = 0; p < n; ++p) {
            double volts[lanes], slopes[lanes];
            std::copy_n(open_volts(p), lanes, volts);
            for (std::size_t q = 0; q < n; ++q)
                for (int lane = 0; lane < lanes; ++lane)
                    volts[lane] -= ohms(p, q)[lane] * amps_of(q)[lane];
            double const* numbers = laws_[p].numbers;
            double* missing = entry(p, n);
            for (int lane = 0; lane < used; ++lane) {
                if (powers) {
                    double const draws = numbers[lane] / volts[lane];
                    missing[lane] = draws - amps_of(p)[lane];
                    slopes[lane] = -draws / volts[lane];
                    fits[as_index(lane)] &= volts[lane] > 0.0;
                } else {
                    SquareLaw const law{numbers[lane], numbers[lanes + lane], numbers[2 * lanes + lane]};
                    missing[lane] = current(law, volts[lane]) - amps_of(p)[lane];
                    slopes[lane] = slope(law, volts[lane]);
                }
            }
            for (std::size_t q = 0; q < n; ++q)
                for (int lane = 0; lane < used; ++lane)
                    entry(p, q)[lane] = (p == q ? 1.0 : 0.0) + slopes[lane] * ohms(p, q)[lane];
        }
        for (std::size_t k = 0; k < n; ++k) {
            for (int lane = 0; lane < used; ++lane)
                fits[as_index(lane)] &= entry(k, k)[lane] > 0.0;
            for (std::size_t row = k + 1; row < n; ++row)
                for (int lane = 0; lane < used; ++lane) {
                    double const share = entry(row, k)[lane] / entry(k, k)[lane];
                    for (std::size_t column = k + 1; column <= n; ++column)
                        entry(row, column)[lane] -= share * entry(k, column)[lane];
                }
        }
        double largest[lanes] = {}, change[lanes] = {};
        for (std::size_t k = n; k-- > 0;) {
            double* step_amps = entry(k, n);
            for (std::size_t column = k + 1; column < n; ++column)
                for (int lane = 0; lane < used; ++lane)
                    step_amps[lane] -= entry(k, column)[lane] * entry(column, n)[lane];
            for (int lane = 0; lane < used; ++lane) {
                step_amps[lane] /= entry(k, k)[lane];
                // A lane that stands still waits, so that its answer does not hang on its neighbors.
                amps_of(k)[lane] += settled[as_index(lane)] ? 0.0 : step_amps[lane];
                change[lane] = std::max(change[lane], std::abs(step_amps[lane]));
                largest[lane] = std::max(largest[lane], std::abs(amps_of(k)[lane]));
            }
        }
        bool all = true;
        for (int lane = 0; lane < used; ++lane) {
            auto& done = settled[as_index(lane)];
            bool const stands = std::isfinite(change[lane]) && change[lane] <= still * largest[lane];
            done = fits[as_index(lane)] && (done || stands);
            all = all && (done || !fits[as_index(lane)]);
        }
        if (all) return;
    }
}

BANKWRIGHT_INLINE void PortLanes::alone(int lane) {
    Ports ports;
    for (std::size_t p = 0; p < ports_; ++p) {
        ports.laws.push_back(with_numbers(laws_[p].kind, laws_[p].numbers + lane, lanes));
        ports.open_volts.push_back(open_volts(p)[lane]);
        for (std::size_t q = 0; q < ports_; ++q) // reciprocity, which rounding blurs
            ports.ohms.push_back(0.5 * (ohms(p, q)[lane] + ohms(q, p)[lane]));
    }
    auto const found = port_currents(ports, SolveOptions{}.max_iterations);
    lost_[as_index(lane)] = found.status != Status::solved;
    for (std::size_t p = 0; p < ports_; ++p)
        amps_of(p)[lane] = found.status == Status::solved ? found.amps[p] : 0.0;
}

} // namespace bankwright::solver
