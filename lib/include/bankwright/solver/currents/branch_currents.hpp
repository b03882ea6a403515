// What flows in each branch? Voltages alone do not say it well: across a good conductor they are nearly equal.
//
// Method. The best conductors make a spanning forest. Currents outside it come from voltages, currents in it from
// Kirchhoff's current law, so the sums at the nodes hold by construction and a branch that leads nowhere carries
// exactly nothing. What these currents miss of Ohm's law in the forest is a small source; one more solve with it alone
// corrects the currents outside.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/currents/forest_currents.hpp"
#include "bankwright/solver/linear_network.hpp"
#include "bankwright/solver/topology.hpp"

#include <vector>

namespace bankwright::solver {

// [V] from - to + emf with one rounding in all: what is lost in each sum is found (Knuth, The Art of Computer
// Programming vol. 2, 4.2.2, two-sum [from memory]) and added at the end. Voltages near 15 V must not blur the drop
// over 1 nohm.
inline double drop(double from, double to, double emf) {
    double const difference = from - to;
    double const from_part = difference + to;
    double const lost = (from - from_part) + ((from_part - difference) - to);
    double const sum = difference + emf;
    double const emf_part = sum - difference;
    double const lost_too = (difference - (sum - emf_part)) + (emf - emf_part);
    return sum + (lost + lost_too);
}

// Holds all that follows from the resistances alone, for a caller who asks often.
class BranchCurrents {
public:
    // Keeps references. The circuit's sources may change afterwards, its resistances not.
    BranchCurrents(Circuit const& circuit, Topology const& topology, LinearNetwork const& network);

    // `volts` [V] by merged node, `load_amps` [A] by load. [A] by branch.
    std::vector<double> amps(std::vector<double> const& volts, std::vector<double> const& load_amps) const;

private:
    Circuit const& circuit_;
    Topology const& topology_;
    LinearNetwork const& network_;
    std::vector<char> in_forest_;    // by branch
    std::vector<ForestStep> forest_; // their lines are branches
};

// The same for a caller who asks once.
std::vector<double> branch_currents(Circuit const& circuit, Topology const& topology, LinearNetwork const& network,
                                    std::vector<double> const& volts, std::vector<double> const& load_amps);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/currents/branch_currents_inl.hpp"
#endif
