// What the solver answers: always a status, and numbers only where they mean something.
#pragma once

#include <string_view>
#include <vector>

namespace bankwright::solver {

enum class Status {
    solved,
    no_operating_point, // the loads ask for more than the sources can give
    not_converged,      // iteration ended without an answer; does not happen on physical banks
    bad_circuit,        // a node out of range, a resistance that is not positive, a number that is not finite
};

constexpr std::string_view name(Status status) {
    switch (status) {
    case Status::solved:
        return "solved";
    case Status::no_operating_point:
        return "no-operating-point";
    case Status::not_converged:
        return "not-converged";
    case Status::bad_circuit:
        return "bad-circuit";
    }
    return "bad-circuit";
}

struct Solution {
    Status status = Status::bad_circuit;
    std::vector<double> volts;       // [V] by node; an island without the reference counts from its own lowest node
    std::vector<int> island;         // by node; 0 is the reference's island
    std::vector<double> branch_amps; // [A] in Circuit's order and sign
    std::vector<double> join_amps;   // [A]; where joins close a ring, the even split that equal small resistances give
    std::vector<double> load_amps;   // [A]; 0 for a load that no closed path feeds
    double residual = 0.0;           // [A] largest sum of currents at any node
    double power_imbalance = 0.0;    // [W] what the sources give less what everything else takes
    double condition = 0.0;          // estimate for the reduced matrix, 1 if there is none
    int iterations = 0;              // of the nonlinear loads
    double reachable_share = 1.0;    // with no_operating_point: largest share of the loads' power that has an answer
};

} // namespace bankwright::solver
