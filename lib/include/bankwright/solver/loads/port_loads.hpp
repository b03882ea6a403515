// Which currents do loads draw whose current depends on their voltage? The network is reduced to their ports first,
// V = V0 - Z I (ports.hpp).
//
// Method. Square-law loads and limited sources draw more at a higher voltage: for any given currents of the others they
// settle in exactly one way (rising_loads.hpp). Constant-power loads draw less; of several answers the one wanted is
// that of the highest voltages, which the loads reach when they are switched on. One such load alone is a quadratic.
// Where every load pulls every other one down (Z >= 0) Newton's method from the open circuit climbs to the smallest
// currents that are an answer and never past them; where the step is not to be trusted, at a kink of a limited source,
// plain iteration I = P / V takes its place (Ortega and Rheinboldt, Iterative Solution of Nonlinear Equations in
// Several Variables, ch. 13, monotone Newton [from memory]). Otherwise the power is turned up from nothing in steps and
// the curve of answers is followed as far as its first fold.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/loads/ports.hpp"
#include "bankwright/solver/solution.hpp"

#include <vector>

namespace bankwright::solver {

struct PortCurrents {
    Status status = Status::not_converged; // solved, no_operating_point or not_converged
    std::vector<double> amps;              // [A] by port, if solved
    int iterations = 0;
    double reachable_share = 1.0; // of the constant powers, if there is no operating point
    double slack = 1.0;           // how far from the fold, if solved: 1 with no constant power, 0 there
};

// A constant-power load whose voltage would be zero or reversed draws nothing.
PortCurrents port_currents(Ports const& ports, int max_iterations);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/loads/port_loads_inl.hpp"
#endif
