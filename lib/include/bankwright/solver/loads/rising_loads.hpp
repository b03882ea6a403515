// How do square-law loads and limited sources settle while the other loads draw given currents?
//
// Method. Each of them draws more at a higher voltage, so together they minimize a convex function of their currents
// (the content of the network and of the loads): there is one answer. Sweeps that settle one load at a time against all
// others lower that function always; Newton's method on the loads that are not at a limit is tried after every sweep
// and kept when it at least halves the error.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/loads/ports.hpp"

#include <vector>

namespace bankwright::solver {

// Where a limited source stands; a square-law load counts as `between`.
enum class Limit { off, between, full };

struct Settled {
    bool converged = false;
    int iterations = 0;
    std::vector<double> rising_amps;  // [A] in the order of `rising`
    std::vector<Limit> limits;        // in the order of `rising`
    std::vector<double> driven_volts; // [V] in the order of `driven`
    std::vector<double> driven_ohms;  // [ohm] row by row: fall of driven_volts with driven_amps
};

// `rising`: ports that settle; `driven`: ports whose currents are given. `start`: a guess of rising_amps, or empty.
Settled settle(Ports const& ports, std::vector<std::size_t> const& rising, std::vector<std::size_t> const& driven,
               std::vector<double> const& driven_amps, std::vector<double> start);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/loads/rising_loads_inl.hpp"
#endif
