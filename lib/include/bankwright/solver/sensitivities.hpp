// How does one reading change with every parameter: each resistance, each emf, each number of each load?
//
// Method. The adjoint network (Director and Rohrer, The generalized adjoint network and network sensitivities, IEEE
// Trans. Circuit Theory 16, 1969 [from memory]), which for resistances is the network itself, its emfs at rest and its
// loads linearised (small_signal.hpp). It is driven where the reading is taken, by 1 A drawn from the span or 1 V in
// the branch, and carries J in a branch and U across a load. With I for what the branch itself carries
//     d reading / d emf = J,   d reading / d resistance = -I J,   d reading / d (current of a load) = U.
// One solve of the same factorised network a reading, however many parameters there are.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/gauge.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/solve.hpp"

#include <vector>

namespace bankwright::solver {

// Each per unit of its parameter: [V] or [A] per ohm, volt, and the units of circuit.hpp.
struct GaugeSensitivities {
    double reading = 0.0;                     // [V] or [A]
    std::vector<double> to_resistance;        // by branch
    std::vector<double> to_emf;               // by branch
    std::vector<std::vector<double>> to_load; // by load: its law's numbers in the order in which the law lists them
};

struct Sensitivities {
    Status status = Status::bad_circuit;
    std::vector<GaugeSensitivities> gauges; // empty unless solved
};

// What follows the law of the other loads is in it. A load that draws nothing, for want of a path or of a voltage,
// moves nothing. Throws std::invalid_argument if a gauge reads what is not in the circuit, or between two islands.
Sensitivities sensitivities(Circuit const& circuit, std::vector<Gauge> const& gauges, SolveOptions const& options = {});

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/sensitivities_inl.hpp"
#endif
