// Which currents do constant-power loads draw, of all answers those with the highest voltages?
// The method and its letters are in port_loads.hpp.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/loads/ports.hpp"
#include "bankwright/solver/loads/rising_loads.hpp"
#include "bankwright/solver/solution.hpp"

#include <vector>

namespace bankwright::solver {

class ConstantPowerLoads {
public:
    // `powered`: the ports of constant power that draw any; `rising`: those that settle around them. Keeps a reference
    // to `ports`.
    ConstantPowerLoads(Ports const& ports, std::vector<std::size_t> rising, std::vector<std::size_t> powered,
                       int max_iterations);

    // With all powers times `share`: solved, no_operating_point or not_converged. `start` [A], in the order of
    // `powered`, is the answer to a smaller share: 0 if none is known.
    Status find(double share, std::vector<double> const& start);

    std::vector<double> const& amps() const { return amps_; } // [A] in the order of `powered`
    Settled const& around() const { return around_; }
    int iterations() const { return iterations_; }
    double slack() const; // determinant of power by current, each row over its volts: 1 at rest, 0 at the fold

private:
    void settle_at(std::vector<double> const& amps);
    bool pull_down() const; // every load lowers the voltage of every other: no entry of Z is negative
    bool alive() const;     // every voltage is above zero
    double missing(std::size_t load, double share) const; // [W]
    double worst_missing(double share) const;             // largest part of a load's power, either way

    // [A] the change that brings `watts` more, to first order. False past a fold of the curve of answers, where the
    // determinant has turned.
    bool step_for(std::vector<double> const& watts, std::vector<double> const& drawn, std::vector<double>& step) const;

    bool kinks_ahead() const;
    bool advance(double share, std::vector<double> const& tried);
    Status climb(double share);
    Status follow(double share);
    bool correct(double share);

    Ports const& ports_;
    std::vector<std::size_t> rising_, powered_;
    std::vector<double> watts_; // [W]
    std::vector<double> amps_;  // [A]
    Settled around_;
    int max_iterations_;
    int iterations_ = 0;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/loads/constant_power_inl.hpp"
#endif
